using FitCheck.Drawings;
using FitCheck.Evaluation;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;

namespace FitCheck.Reports.Wording;

/// <summary>Findings that say the same words of several subjects, to be told once.</summary>
internal sealed record Told(IReadOnlyList<Finding> Findings)
{
    public Finding First => Findings[0];

    /// <summary>`Front door, left and right`.</summary>
    public string Where => Names.Joined(Findings.Select(f => f.PositionName));

    /// <summary>The lines of the build that they come from.</summary>
    public IEnumerable<Location> Places => Findings.Select(f => f.At).Distinct();

    /// <summary>In the order in which each first appears.</summary>
    public static IReadOnlyList<Told> Of(IEnumerable<Finding> findings) =>
        [.. findings.GroupBy(Words, StringComparer.Ordinal).Select(g => new Told([.. g]))];

    /// <summary>
    /// The unwaived findings of a status, by position in the order of the vehicle, then outputs, then what belongs to no place.
    /// </summary>
    public static IReadOnlyList<Told> Of(BuildResult build, Status status)
    {
        var order = Order(build);
        return Of(build.Findings.Where(f => f.Status == status && f.Waived is null)
            .OrderBy(f => order.GetValueOrDefault(f.Position, int.MaxValue)));
    }

    private static string Words(Finding f) =>
        string.Join('\0', f.Rule, f.Status.Word(), f.Title, f.Message, f.Advice, Figures.Row(f),
            f.Waived is null ? "" : "waived: " + Sentences.Waived(f));

    private static Dictionary<string, int> Order(BuildResult build)
    {
        var order = new Dictionary<string, int>(StringComparer.Ordinal);
        Add(Subject.Position);
        // A build whose facts are told needs no drawing to know its places.
        if (order.Count == 0)
        {
            foreach (var drawing in build.Drawings)
                order.TryAdd(drawing.Position, order.Count);
        }
        Add(Subject.Channel);
        foreach (var table in build.Facts)
            order.TryAdd(table.Key, order.Count);
        return order;

        void Add(Subject subject)
        {
            foreach (var table in build.Facts)
            {
                if (table.Subject == subject)
                    order.TryAdd(table.Key, order.Count);
            }
        }
    }
}
