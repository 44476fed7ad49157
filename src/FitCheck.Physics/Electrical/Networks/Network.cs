using System.Numerics;
using FitCheck.Physics.Numerics;

namespace FitCheck.Physics.Electrical.Networks;

/// <summary>
/// A linear network with one voltage source, solved by nodal analysis at one frequency after another.
/// Nodes are integers; 0 is ground (the return). Kirchhoff's current law at every other node gives Y·v = i
/// (any text on circuit theory). Build it once, then sweep. Not thread-safe: the working matrix is reused.
/// </summary>
internal sealed class Network
{
    private readonly List<Part> _parts = [];
    private int _lastNode;
    private int _sourceNode;
    private double _sourceVolts;
    private Complex[] _matrix = [];
    private Complex[] _rightSide = [];
    private bool _connected;

    /// <summary>A node that nothing uses yet.</summary>
    public int AddNode() => Use(_lastNode + 1);

    /// <summary>A resistor in ohm (≥ 0) between two nodes; 0 ohm acts as 1 µohm.</summary>
    public void AddResistor(int from, int to, double ohm) => Add(from, to, new SeriesImpedance(Resistance: ohm));

    /// <summary>An inductor in henry (≥ 0) between two nodes; 0 H acts as 1 µohm.</summary>
    public void AddInductor(int from, int to, double henry) => Add(from, to, new SeriesImpedance(Inductance: henry));

    /// <summary>A capacitor in farad (&gt; 0) between two nodes.</summary>
    public void AddCapacitor(int from, int to, double farad) => Add(from, to, new SeriesImpedance(Capacitance: farad));

    /// <summary>Resistance, inductance and capacitance in series between two nodes, without nodes of their own inside.</summary>
    public void Add(int from, int to, SeriesImpedance parts)
    {
        parts.Checked();
        Add(new Part(Use(from), Use(to), parts, Admittance: null));
    }

    /// <summary>Anything with two terminals: its admittance in siemens as a function of the frequency in Hz. It must be finite.</summary>
    public void AddAdmittance(int from, int to, Func<double, Complex> admittance)
    {
        ArgumentNullException.ThrowIfNull(admittance);
        Add(new Part(Use(from), Use(to), default, admittance));
    }

    /// <summary>An ideal voltage source of a number of volts (phase 0) from a node to ground. A second call moves it.</summary>
    public void SetSource(int node, double volts = 1)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(node, 1);
        _sourceNode = Use(node);
        _sourceVolts = volts;
        _connected = false;
    }

    /// <summary>Voltages and source current at a frequency in Hz (&gt; 0).</summary>
    /// <exception cref="InvalidOperationException">There is no source.</exception>
    /// <exception cref="FloatingNodeException">A node has no path to ground or to the source.</exception>
    public NetworkSolution Solve(double hz)
    {
        if (!(hz > 0 && double.IsFinite(hz)))
            throw new ArgumentOutOfRangeException(nameof(hz), hz, "A frequency is a finite number of hertz above zero.");
        if (_sourceNode == 0)
            throw new InvalidOperationException("The network has no source. Call SetSource first.");
        RequireConnection();

        // Ground and the source node have known voltages, so they are no unknowns.
        var unknowns = _lastNode - 1;
        Array.Clear(_matrix);
        Array.Clear(_rightSide);
        foreach (var part in _parts)
            Stamp(part, part.AdmittanceAt(hz), unknowns);
        ComplexLu.Solve(_matrix, _rightSide, unknowns);

        var voltages = new Complex[_lastNode + 1];
        voltages[_sourceNode] = _sourceVolts;
        for (var node = 1; node <= _lastNode; node++)
        {
            if (node != _sourceNode)
                voltages[node] = _rightSide[Row(node)];
        }

        return new NetworkSolution(hz, voltages, _sourceNode, SourceCurrent(voltages, hz));
    }

    private void Stamp(Part part, Complex y, int unknowns)
    {
        StampEnd(part.From, part.To, y, unknowns);
        StampEnd(part.To, part.From, y, unknowns);
    }

    private void StampEnd(int node, int other, Complex y, int unknowns)
    {
        if (node == 0 || node == _sourceNode)
            return;
        var row = Row(node);
        _matrix[(row * unknowns) + row] += y;
        if (other == _sourceNode)
            _rightSide[row] += y * _sourceVolts;
        else if (other != 0)
            _matrix[(row * unknowns) + Row(other)] -= y;
    }

    private Complex SourceCurrent(Complex[] voltages, double hz)
    {
        var current = Complex.Zero;
        foreach (var part in _parts)
        {
            if (part.From == _sourceNode)
                current += part.AdmittanceAt(hz) * (voltages[part.From] - voltages[part.To]);
            else if (part.To == _sourceNode)
                current += part.AdmittanceAt(hz) * (voltages[part.To] - voltages[part.From]);
        }

        return current;
    }

    private void RequireConnection()
    {
        if (_connected)
            return;
        var reached = new bool[_lastNode + 1];
        reached[0] = reached[_sourceNode] = true;
        for (var grew = true; grew;)
        {
            grew = false;
            foreach (var part in _parts)
            {
                if (reached[part.From] == reached[part.To])
                    continue;
                reached[part.From] = reached[part.To] = grew = true;
            }
        }

        var lost = Array.IndexOf(reached, value: false);
        if (lost >= 0)
            throw new FloatingNodeException(lost);
        var unknowns = _lastNode - 1;
        _matrix = new Complex[unknowns * unknowns];
        _rightSide = new Complex[unknowns];
        _connected = true;
    }

    private void Add(Part part)
    {
        if (part.From == part.To)
            return;
        _parts.Add(part);
        _connected = false;
    }

    private int Use(int node)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(node);
        if (node > _lastNode)
        {
            _lastNode = node;
            _connected = false;
        }

        return node;
    }

    private int Row(int node) => node < _sourceNode ? node - 1 : node - 2;

    private sealed record Part(int From, int To, SeriesImpedance Series, Func<double, Complex>? Admittance)
    {
        public Complex AdmittanceAt(double hz) => Admittance is null ? Series.AdmittanceAt(hz) : Admittance(hz);
    }
}
