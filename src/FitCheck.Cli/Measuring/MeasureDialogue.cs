using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Cli.Asking;
using FitCheck.Evaluation;
using FitCheck.Measuring;
using FitCheck.Reports.Measuring;
using FitCheck.Reports.Text;
using FitCheck.Reports.Wording;

namespace FitCheck.Cli.Measuring;

/// <summary>Asks for the readings of a build one by one, until nothing is open or the person has had enough.</summary>
/// <param name="ask">Puts the questions.</param>
/// <param name="page">Where it is told what to read, and what came of it.</param>
/// <param name="judge">Judges a text of the build; problems where it is none.</param>
/// <param name="keep">Writes a text of the build; a sentence where it can't.</param>
internal sealed class MeasureDialogue(IQuestions ask, TextPage page, Func<string, CheckOutcome> judge, Func<string, string?> keep)
{
    /// <summary>Ends the questions.</summary>
    public const string Stop = "stop";

    private readonly HashSet<DatumKey> _asked = [];
    // What was asked, the last one last, and how it stood before.
    private readonly List<(DatumKey Key, string Text, BuildResult Build, int Written)> _passed = [];
    private string? _place;

    /// <summary>Bare numbers of lengths count inches.</summary>
    public bool InInches { get; init; }

    /// <summary>The day that is written beside each reading.</summary>
    public required DateOnly Today { get; init; }

    /// <summary>Why the last reading could not be written; null where all were.</summary>
    public string? Failed { get; private set; }

    /// <summary>How many readings were written.</summary>
    public int Written { get; private set; }

    /// <summary>Asks; each answer is written at once, so that breaking off loses none. Returns the last judgement.</summary>
    public BuildResult Run(string text, BuildResult build)
    {
        while (OpenReadings.Of(build).FirstOrDefault(r => !_asked.Contains(r.Key)) is { } reading)
        {
            _asked.Add(reading.Key);
            Tell(reading, _passed.Count + 1);
            var (next, judged) = (text, build);
            string answer;
            try
            {
                answer = ask.Text($"{MeasureWords.Here(reading)}{Hint(reading)}", "", typed => Wrong(typed));
            }
            catch (StepBack)
            {
                _asked.Remove(reading.Key);
                if (!IsTakenBack(ref text, ref build))
                    break;
                continue;
            }
            if (answer == Stop)
                break;
            _passed.Add((reading.Key, text, build, Written));
            if (answer.Length == 0)
                continue;
            if (keep(next) is { } failed)
            {
                Failed = failed;
                break;
            }
            (text, build, Written) = (next, judged, Written + 1);
            foreach (var outcome in MeasureWords.Outcomes(reading, build.Findings))
                page.Hanging(5, "→ ", outcome);

            string? Wrong(string typed)
            {
                if (typed.Length == 0 || typed == Stop)
                    return null;
                var (given, wrong) = TypedReading.Of(reading.Answer, typed, InInches);
                if (given is null)
                    return wrong;
                (var changed, wrong) = ReadingWriter.Written(text, reading.Key, given, Today);
                if (changed is null)
                    return wrong;
                var outcome = judge(changed);
                if (outcome.Result is not { } result)
                    return outcome.Problems.Count > 0 ? outcome.Problems[0].Message : "this can't be read";
                (next, judged) = (changed, result.Builds[0]);
                return null;
            }
        }
        return build;
    }

    // The question before is asked anew; what was written for it goes out of the file. Before the first question there is none. False where
    // the file can't be written.
    private bool IsTakenBack(ref string text, ref BuildResult build)
    {
        if (_passed.Count == 0)
            return true;
        var (key, earlier, judged, written) = _passed[^1];
        if (earlier != text && keep(earlier) is { } failed)
        {
            Failed = failed;
            return false;
        }
        _passed.RemoveAt(_passed.Count - 1);
        _asked.Remove(key);
        (text, build, Written) = (earlier, judged, written);
        return true;
    }

    private void Tell(OpenReading reading, int number)
    {
        page.Gap();
        if (_place != reading.Place)
            page.Heading(reading.Place);
        _place = reading.Place;
        MeasureText.WriteOne(page, reading, number, withLine: false);
    }

    private string Hint(OpenReading reading) => reading.Answer switch
    {
        { IsLength: true, Words: [] } => InInches ? " (inches; Enter skips)" : " (mm, or `2 9/16 in`; Enter skips)",
        { IsLength: true, Words: var words } => $" ({(InInches ? "inches" : "mm")}, or {string.Join(", ", words)}; Enter skips)",
        { IsNumber: false, Words: { Count: > 0 } words } => $" ({string.Join(", ", words)}; Enter skips)",
        { Unit: { } unit } => $" ({PlainText.Line(unit)}; Enter skips)",
        _ => " (Enter skips)",
    };
}
