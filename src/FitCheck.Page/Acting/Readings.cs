using FitCheck.Builds.Readable;
using FitCheck.Measuring;
using FitCheck.Page.Judging;
using FitCheck.Page.State;
using FitCheck.Physics.Quantities;

namespace FitCheck.Page.Acting;

/// <summary>What was typed into the fields of open readings.</summary>
internal static class Readings
{
    private const string Begins = "read.";

    /// <summary>The name of the field of a reading.</summary>
    public static string Field(DatumKey key) => $"{Begins}{key.At}/{key.Of}";

    /// <summary>Whether anything was typed.</summary>
    public static bool Any(IForm form) => form.Fields(Begins).Any(f => f.Value.Trim().Length > 0);

    /// <summary>Puts all that was typed into the build, as one action; what can't be is told beside its field.</summary>
    public static Outcome Taken(PageState state, IForm form, Desk desk)
    {
        var typed = form.Fields(Begins).Where(f => f.Value.Trim().Length > 0).DistinctBy(f => f.Key).ToList();
        var open = desk.Of(state.Name, state.Text, judged => judged.Result is { } result
            ? (OpenReadings.Of(result), judged.Build!.Units == LengthUnits.Inch) : ([], false));
        var (text, wrong, on) = (state.Text, new Dictionary<string, (string, string)>(StringComparer.Ordinal), desk.Today);
        foreach (var (field, value) in typed)
        {
            if (open.Item1.FirstOrDefault(r => Field(r.Key) == field) is not { } reading)
                continue;
            var (given, why) = TypedReading.Of(reading.Answer, value, open.Item2);
            var written = given is null ? null
                : ReadingWriter.Written(text, reading.Key, given, on) is var (after, no) && (why = no) is null
                ? after : null;
            if (written is not null && desk.Of(state.Name, written, j => j.Result is null ? j.Problems : null) is { } problems)
                (written, why) = (null, problems.Count > 0 ? problems[0].Message : "this can't be read");
            if (written is null)
                wrong[field] = (value, why ?? "this can't be read");
            else
                text = written;
        }
        return new Outcome(state.Changed(text)) { WrongReadings = wrong };
    }
}
