using System.Numerics;

namespace FitCheck.Physics.Electrical.Networks;

/// <summary>What a <see cref="Network"/> does at one frequency.</summary>
internal sealed class NetworkSolution
{
    private readonly Complex[] _voltages;
    private readonly int _sourceNode;

    internal NetworkSolution(double hz, Complex[] voltages, int sourceNode, Complex sourceCurrent)
    {
        Hz = hz;
        _voltages = voltages;
        _sourceNode = sourceNode;
        SourceCurrent = sourceCurrent;
    }

    /// <summary>The frequency in Hz.</summary>
    public double Hz { get; }

    /// <summary>Current out of the source in ampere.</summary>
    public Complex SourceCurrent { get; }

    /// <summary>Voltage of a node against ground, in volt.</summary>
    public Complex Voltage(int node) => _voltages[node];

    /// <summary>What the source sees, Z = V/I in ohm. Infinite when nothing draws current.</summary>
    public Complex Impedance => SourceCurrent == Complex.Zero
        ? new Complex(double.PositiveInfinity, 0)
        : _voltages[_sourceNode] / SourceCurrent;
}
