using FitCheck.Facts;
using FitCheck.Findings;
using FitCheck.Yaml;

namespace FitCheck.Reports.Telling;

/// <summary>Findings that say the same words of several subjects, to be told once.</summary>
public sealed record Told(IReadOnlyList<Finding> Findings)
{
    public Finding First => Findings[0];

    /// <summary>`Front door, left and right`.</summary>
    public string Where => Names.Joined(Findings.Select(f => f.PositionName));

    /// <summary>The lines of the build that they come from.</summary>
    public IEnumerable<Location> Places => Findings.Select(f => f.At).Distinct();

    /// <summary>In the order in which each first appears.</summary>
    public static IReadOnlyList<Told> Of(IEnumerable<Finding> findings) =>
        [.. findings.GroupBy(f => (f.Rule, f.Status, f.Title, f.Message, f.Advice, Figures.Row(f), f.Waived)).Select(g => new Told([.. g]))];

    /// <summary>The unwaived findings of a status, by position in the order of the vehicle, then outputs, then what belongs to no place.</summary>
    public static IReadOnlyList<Told> Of(BuildResult build, Status status)
    {
        var order = Order(build);
        return Of(build.Findings.Where(f => f.Status == status && f.Waived is null).OrderBy(f => order.GetValueOrDefault(f.Position, int.MaxValue)));
    }

    private static Dictionary<string, int> Order(BuildResult build)
    {
        var order = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var key in Keys(Subject.Position).Concat(build.Drawings.Select(d => d.Position))
            .Concat(Keys(Subject.Channel)).Concat(build.Loads.Select(l => l.Channel)).Concat(build.Facts.Select(f => f.Key)))
        {
            order.TryAdd(key, order.Count);
        }
        return order;

        IEnumerable<string> Keys(Subject subject) => build.Facts.Where(f => f.Subject == subject).Select(f => f.Key);
    }
}
