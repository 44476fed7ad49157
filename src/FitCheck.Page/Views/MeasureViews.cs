using FitCheck.Measuring;
using FitCheck.Page.Acting;
using FitCheck.Page.Judging;
using FitCheck.Physics.Quantities;
using FitCheck.Reports.Measuring;
using FitCheck.Reports.Wording;

namespace FitCheck.Page.Views;

/// <summary>What is to be read off the car before anything is bought or cut, each with a field.</summary>
internal static class MeasureViews
{
    public static MeasureView Of(Judged judged, Outcome outcome)
    {
        var open = OpenReadings.Of(judged.Result!);
        var inches = judged.Build!.Units == LengthUnits.Inch;
        IReadOnlyList<string> entries = [.. OpenReadings.InEntries(judged.Result!)
            .Select(i => $"{MeasureWords.Sentence(i.What)}. {i.How}")];
        return new MeasureView(open.Count == 0 ? MeasureWords.Nothing
            : $"{Sentences.Count(open.Count, "reading is", "readings are")} open, in the order in which the car is opened. Type what you "
                + "read; the build is judged anew at once.",
            [.. open.GroupBy(r => r.Place, StringComparer.Ordinal)
                .Select(g => new MeasurePlaceView(g.Key, [.. g.Select(r => View(r, outcome, inches))]))],
            entries);
    }

    private static ReadingView View(OpenReading reading, Outcome outcome, bool inches)
    {
        var field = Readings.Field(reading.Key);
        var (typed, wrong) = outcome.WrongReadings.GetValueOrDefault(field, ("", ""));
        var answer = reading.Answer;
        return new ReadingView
        {
            Field = field,
            Id = $"read-{Mark.Of(field)}",
            What = MeasureWords.Here(reading),
            How = reading.How,
            Unit = answer.IsLength ? inches ? "inches, or with a unit: `65 mm`" : "mm, or inches: `2 9/16 in`" : answer.Unit,
            Words = [.. answer.Words.Where(w => w.Length > 0)],
            IsNumber = answer.IsNumber || answer.Words.Contains(""),
            Typed = typed,
            Wrong = wrong.Length == 0 ? null : wrong,
            Decides = MeasureWords.Decides(reading),
        };
    }
}
