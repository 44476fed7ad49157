using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.QuoteImport;

namespace FitCheck.Reports.Wording;

/// <summary>One thing to measure before money is spent, and what it decides.</summary>
internal sealed record MeasureTask(string What, string How, IReadOnlyList<MeasureOutcome> Outcomes)
{
    /// <summary>
    /// The lines to fill in under `readings` of the build, one for each place; none where no reading answers it.
    /// </summary>
    public IReadOnlyList<string> Lines { get; init; } = [];
}

/// <summary>The value that would pass (null when that can't be told), and the findings that wait for it.</summary>
internal sealed record MeasureOutcome(string? Passing, Told Told);

/// <summary>
/// The work sheet: one entry a datum, however many findings wait for it; the same datum of mirrored places is one entry too.
/// </summary>
internal static class MeasureFirst
{
    /// <summary>What is done with the lines of the tasks.</summary>
    public static string WhatToDo(string file) => BuildText.ListOf(file) is { } list
        ? $"Save the build first, by `fitcheck new build --from {FileNames.Word(list)}`; then write what you read into it, each line under "
            + "`readings:`, or let `fitcheck measure` ask for it."
        : $"Write what you read into the build, each line under `readings:`, or let `fitcheck measure {FileNames.Word(file)}` ask for it.";

    public static IReadOnlyList<MeasureTask> Of(BuildResult build)
    {
        var waiting = Told.Of(build, Status.Measure).SelectMany(t => t.Findings).ToList();
        var data = new List<Datum>();
        foreach (var alike in waiting.SelectMany(Wanted).GroupBy(w => $"{w.Item.What}\0{w.Item.How}", StringComparer.Ordinal))
            data.Add(new Datum(alike.First().Item.What, alike.First().Item.How, [.. alike]));
        // What only the maker knows is asked when all else is known.
        return [.. Mirrored(data).OrderBy(d => d[0].Waiting[0].Item.IsForMaker).Select(Task)];
    }

    private sealed record Datum(string What, string How, IReadOnlyList<Wait> Waiting);

    private sealed record Wait(ToMeasure Item, Finding Finding)
    {
        /// <summary>Waits that agree in it are told once.</summary>
        public string Decides { get; } = $"{Item.Passing}\0{Finding.Rule}";
    }

    private static IEnumerable<Wait> Wanted(Finding finding) =>
        finding.ToMeasure.DefaultIfEmpty(new ToMeasure(finding.Title, finding.Advice, null)).Select(item => new Wait(item, finding));

    // Data that differ in one word of their names and decide the same checks in the same way.
    private static IEnumerable<List<Datum>> Mirrored(List<Datum> data)
    {
        var rest = new List<Datum>(data);
        while (rest.Count > 0)
        {
            var first = rest[0];
            var alike = rest.Where(d => d == first || AreMirrored(first, d)).ToList();
            // A third kind of difference would make a name that says more than is so.
            if (alike.Count > 1 && Names.Joined(alike.Select(d => d.What)).Contains(';', StringComparison.Ordinal))
                alike = [first];
            rest.RemoveAll(alike.Contains);
            yield return alike;
        }
    }

    private static bool AreMirrored(Datum one, Datum other) =>
        one.How == other.How
        && Names.Difference(one.What.Split(' '), other.What.Split(' ')) >= 0
        && one.Waiting.Select(w => w.Decides).SequenceEqual(other.Waiting.Select(w => w.Decides), StringComparer.Ordinal);

    private static MeasureTask Task(List<Datum> alike) => new(Names.Joined(alike.Select(d => d.What)), alike[0].How,
        [.. alike.SelectMany(d => d.Waiting).GroupBy(w => w.Decides, StringComparer.Ordinal)
            .Select(g => new MeasureOutcome(g.First().Item.Passing, new Told([.. g.Select(w => w.Finding)])))])
    {
        Lines = [.. alike.SelectMany(d => d.Waiting).Select(w => w.Item.ToFillIn).OfType<string>().Distinct(StringComparer.Ordinal)],
    };
}
