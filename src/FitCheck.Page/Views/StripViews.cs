using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Page.Judging;
using FitCheck.Page.State;
using FitCheck.Reports.Html;
using FitCheck.Reports.Wording;

namespace FitCheck.Page.Views;

/// <summary>What is always in sight: the verdict, the price, and what the last action moved.</summary>
internal static class StripViews
{
    public static StripView Of(PageState state, Judged? judged, BuildResult? before) => judged switch
    {
        null => new StripView { Sentence = "Say which car it is for; every part is then judged before you take it." },
        { Result: null } => new StripView
        {
            IsBuild = true,
            Name = state.Name,
            Sentence = "The text of the build can't be read; what is wrong is told below.",
            Status = FindingViews.Status(Status.Fail),
        },
        { Result: { } result } => new StripView
        {
            IsBuild = true,
            Name = result.Name,
            Vehicle = result.VehicleName,
            Status = IsEmpty(judged) ? null : FindingViews.Status(result.Verdict),
            Sentence = IsEmpty(judged) ? "Nothing is chosen yet: begin at a place of the car." : Headline.Of(result),
            Total = result.Totals.Count == 0 ? null : string.Join(" + ", result.Totals),
            Budget = Sentences.Budget(result),
            Moved = before is null ? null : Moved(before, result),
        },
    };

    /// <summary>Whether nothing was put anywhere.</summary>
    public static bool IsEmpty(Judged judged) => judged.Build is { } build
        && build.Placed.All(p => p.Driver is null && p.Adapter is null && p.Cup is null) && !build.Devices.Any(d => !d.IsFactory);

    private static string? Moved(BuildResult before, BuildResult after)
    {
        var (gone, come) = (Told.Of(ChoicePreview.Without(before, after)), Told.Of(ChoicePreview.Without(after, before)));
        var said = new List<string>();
        if (before.Verdict != after.Verdict)
            said.Add($"verdict {before.Verdict.Word()} → {after.Verdict.Word()}");
        if (gone.Count > 0)
            said.Add($"gone: {Titles(gone)}");
        if (come.Count > 0)
            said.Add($"new: {Titles(come)}");
        return said.Count == 0 ? null : $"By the last action: {string.Join("; ", said)}.";
    }

    private static string Titles(IReadOnlyList<Told> told)
    {
        var titles = told.OrderByDescending(t => t.First.Status).Select(t => $"{t.First.Title} ({t.First.Status.Word()})")
            .Distinct(StringComparer.Ordinal).ToList();
        return string.Join(", ", titles.Take(3)) + (titles.Count > 3 ? $", and {Figures.Whole(titles.Count - 3)} more" : "");
    }
}
