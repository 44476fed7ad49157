using System.Globalization;
using FitCheck.Catalog;
using FitCheck.Foundation.Problems;

namespace FitCheck.Builds;

/// <summary>Reads `waive`. One waiver of several places becomes one for each, so that each that matches nothing is told.</summary>
internal sealed class WaiverReader(DateOnly today, ProblemList problems)
{
    /// <summary>A day as it is written, `2027-03-31`.</summary>
    public const string DayFormat = "yyyy-MM-dd";

    public (IReadOnlyList<Waiver> Holding, IReadOnlyList<Waiver> Ended) Read(Fields build)
    {
        var (holding, ended) = (new List<Waiver>(), new List<Waiver>());
        foreach (var f in build.Each("waive"))
        {
            if (f.Text("rule") is not { } rule)
                continue;
            var until = Day(f.Text("until"));
            var waiver = new Waiver(rule.Value, f.Text("at")?.Value, f.Word("reason"), rule.At, until);
            var those = until?.Value < today ? ended : holding;
            if (f.Texts("at") is { Count: > 0 } places)
                those.AddRange(places.Select(p => waiver with { Position = p.Value, At = p.At }));
            else
                those.Add(waiver);
        }
        return (holding, ended);
    }

    // What is not even written like a day the schema tells.
    private Located<DateOnly>? Day(Located<string>? text)
    {
        if (text is null)
            return null;
        if (DateOnly.TryParseExact(text.Value, DayFormat, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
            return new Located<DateOnly>(day, text.At);
        problems.Error(text.At, $"`{text.Value}` is no day of the calendar; expected a day such as `2027-03-31`", ProblemKind.WrongShape);
        return null;
    }
}
