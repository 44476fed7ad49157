using FitCheck.Catalog;

namespace FitCheck.Charts;

/// <summary>Puts the rows of drivers together to rows of the sets that they are sold in.</summary>
internal static class SetRows
{
    /// <summary>A set at an output is told when each of its drivers has a place on the output.</summary>
    public static IEnumerable<SetRow> Of(IReadOnlyList<ComponentSet> sets, IReadOnlyList<ChartRow> rows)
    {
        var outputs = rows.Where(r => r.Position.FactoryChannel is not null)
            .GroupBy(r => (r.Vehicle.Id, r.Position.FactoryChannel!.Value));
        foreach (var output in outputs)
        {
            foreach (var set in sets)
            {
                var placed = output.Where(r => r.Driver.Id == (r.Position.Role == "tweeter" ? set.Tweeter : set.Woofer)?.Value).ToList();
                if (placed.Count > 0 && Has(set.Woofer, placed) && Has(set.Tweeter, placed))
                    yield return new SetRow(set, placed[0].Vehicle, output.Key.Value, placed);
            }
        }
    }

    private static bool Has(Yaml.Located<string>? member, List<ChartRow> placed) => member is null || placed.Exists(r => r.Driver.Id == member.Value);
}
