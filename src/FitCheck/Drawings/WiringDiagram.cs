namespace FitCheck.Drawings;

/// <summary>The wires of one channel: output, what stands in the line, and the drivers at the ends.</summary>
/// <param name="Channel">The channel's name in the build.</param>
/// <param name="Name">The channel as the reports call it.</param>
/// <param name="Output">Name of the device.</param>
/// <param name="Terminals">Its outputs as the build names them; several when bridged.</param>
/// <param name="InLine">Parts in the wire before it branches, from the output on.</param>
/// <param name="Crossover">Name of the passive crossover; null without.</param>
/// <param name="Ends">The drivers.</param>
public sealed record WiringDiagram(
    string Channel, string Name, string Output, IReadOnlyList<string> Terminals, IReadOnlyList<string> InLine, string? Crossover,
    IReadOnlyList<WireEnd> Ends);

/// <summary>One driver at the end of a wire.</summary>
/// <param name="Position">The position's name.</param>
/// <param name="Driver">The driver's name; for a factory driver that stays, that it does.</param>
/// <param name="Path">Plugs, adapters, splices and terminals on the way, in words.</param>
/// <param name="IsTweeter">It hangs on the crossover's high-pass.</param>
/// <param name="IsFactory">A factory driver that stays in parallel; drawn dashed.</param>
public sealed record WireEnd(string Position, string Driver, string Path, bool IsTweeter, bool IsFactory);
