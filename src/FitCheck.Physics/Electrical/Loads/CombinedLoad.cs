namespace FitCheck.Physics.Electrical.Loads;

/// <summary>Resistive loads together, ohm.</summary>
internal static class CombinedLoad
{
    /// <summary>In parallel: 1/Σ(1/R). All above zero; at least one.</summary>
    public static double Parallel(params IReadOnlyList<double> loads)
    {
        var conductance = 0.0;
        foreach (var load in NotEmpty(loads))
            conductance += 1 / load;
        return 1 / conductance;
    }

    /// <summary>In series: Σ R. At least one.</summary>
    public static double Series(params IReadOnlyList<double> loads) => NotEmpty(loads).Sum();

    /// <summary>What each half of a bridged pair sees: half the load, as the other half drives the far end in opposition.</summary>
    public static double SeenByBridgedHalf(double load) => load / 2;

    /// <summary>The lowest load a bridged pair may drive, from the lowest load of one half: twice that.</summary>
    public static double LowestBridged(double lowestOfOneHalf) => 2 * lowestOfOneHalf;

    private static IReadOnlyList<double> NotEmpty(IReadOnlyList<double> loads) =>
        loads.Count > 0 ? loads : throw new ArgumentException("Give at least one load.", nameof(loads));
}
