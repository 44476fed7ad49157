namespace FitCheck.Physics.Electrical.Networks;

/// <summary>One rung of a passive network: parts in series with each other, either in line with the signal or across it.</summary>
/// <param name="Shunt">True when it lies across the signal (to the return), false when in line.</param>
/// <param name="Resistance">Ohm, ≥ 0; null when absent. The resistance of a coil's wire goes here.</param>
/// <param name="Inductance">Henry, ≥ 0; null when absent.</param>
/// <param name="Capacitance">Farad, &gt; 0; null when absent.</param>
internal sealed record LadderElement(bool Shunt, double? Resistance = null, double? Inductance = null, double? Capacitance = null)
{
    /// <summary>The parts of the rung.</summary>
    public SeriesImpedance Parts => new(Resistance, Inductance, Capacitance);

    /// <summary>A rung in line with the signal.</summary>
    public static LadderElement InLine(double? resistance = null, double? inductance = null, double? capacitance = null) =>
        new(Shunt: false, resistance, inductance, capacitance);

    /// <summary>A rung across the signal.</summary>
    public static LadderElement Across(double? resistance = null, double? inductance = null, double? capacitance = null) =>
        new(Shunt: true, resistance, inductance, capacitance);
}

/// <summary>A passive crossover, a capacitor, an L-pad: rungs in the order from the source to the driver.</summary>
internal static class Ladder
{
    /// <summary>
    /// Connects the rungs, starting at a node; shunt rungs go to the return node. Returns the node at which the driver connects,
    /// which is the start itself when nothing lies in line.
    /// </summary>
    /// <param name="network">The network that they become part of.</param>
    /// <param name="elements">The rungs.</param>
    /// <param name="from">The node on the source's side.</param>
    /// <param name="returnNode">The node of the return wire.</param>
    /// <param name="nodes">Takes the two nodes of each rung, for whoever asks what it bears; null when nobody does.</param>
    /// <exception cref="ArgumentException">A shunt rung has no part: it would short the signal.</exception>
    public static int Stamp(Network network, IReadOnlyList<LadderElement> elements, int from, int returnNode = 0,
        ICollection<(LadderElement Rung, int Hot, int Cold)>? nodes = null)
    {
        ArgumentNullException.ThrowIfNull(network);
        ArgumentNullException.ThrowIfNull(elements);
        var node = from;
        foreach (var element in elements)
        {
            if (element.Shunt)
            {
                if (element.Parts.IsEmpty)
                    throw new ArgumentException(
                        "A shunt element without a part would short the signal. Give it a resistance, an inductance or a capacitance.",
                        nameof(elements));
                network.Add(node, returnNode, element.Parts);
                nodes?.Add((element, node, returnNode));
            }
            else if (!element.Parts.IsEmpty)
            {
                var next = network.AddNode();
                network.Add(node, next, element.Parts);
                nodes?.Add((element, node, next));
                node = next;
            }
        }

        return node;
    }
}
