using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Sound;
using FitCheck.Facts.Values;
using FitCheck.Physics.Electrical.Cables;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Devices;

/// <summary>The current that amplifiers draw from the vehicle.</summary>
internal static class SupplyDemand
{
    /// <summary>
    /// At full power into the loads that the build puts on its outputs: ΣP/(η·V), A; guessed from its own fuses where its power is not
    /// known.
    /// </summary>
    public static FactValue Of(DeviceContext c)
    {
        var amplifier = c.Amplifier!;
        var watts = Uncertain.Exact(0);
        var known = false;
        var unsure = new List<Unsure>();
        foreach (var channel in c.Own)
        {
            if (PowerFacts.IntoLoad(channel) is not ({ } into, var more))
            {
                known = false;
                unsure.AddRange(channel.Sweep is null ? channel.Unsure : [PowerFacts.OutputPower(channel, estimated: true)]);
                break;
            }
            known = true;
            watts += into;
            unsure.AddRange(more);
        }
        if (known)
        {
            var amperes = watts * Uncertain.Exact(SupplyDrop.Current(1, Efficiency(amplifier, c.Practice), c.Practice.RunningVoltage));
            return FactValue.Of(Dimension.Ampere, amperes) with { Unsure = [.. unsure.Distinct()] };
        }
        if (unsure.Count == 0)
            unsure.Add(new Unsure($"what {c.Name} feeds", "Name the positions on its outputs in `channels`.", Estimated: true));
        var guess = unsure.Select(u => u with { Estimated = true }).Distinct().ToArray();
        return amplifier.Fuses.Count > 0
            ? FactValue.Of(Dimension.Ampere, amplifier.Fuses.Sum(f => f.Si)) with { Unsure = guess }
            : FactValue.Unknown(FactType.Number(Dimension.Ampere), guess);
    }

    /// <summary>Of all amplifiers together.</summary>
    public static FactValue Sum(IReadOnlyList<FactValue> demands)
    {
        var sum = Uncertain.Exact(0);
        var unsure = demands.SelectMany(d => d.Unsure).Distinct().ToArray();
        foreach (var demand in demands)
        {
            if (demand.Number is not { } number)
                return FactValue.Unknown(FactType.Number(Dimension.Ampere), unsure);
            sum += number;
        }
        return FactValue.Of(Dimension.Ampere, sum) with { Unsure = unsure };
    }

    private static double Efficiency(Amplifier amplifier, Practice practice) => amplifier.Efficiency?.Si
        ?? (amplifier.Class == "D" ? practice.EfficiencyClassD : practice.EfficiencyOtherClasses);
}
