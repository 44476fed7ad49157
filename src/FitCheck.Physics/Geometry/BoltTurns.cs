namespace FitCheck.Physics.Geometry;

/// <summary>
/// Two bolt patterns while the second is turned against the first: room to count in, made once for all turns. Angles are in radians.
/// </summary>
internal sealed class BoltTurns
{
    // Turns that differ by less are one: equal patterns give the same turn over and over.
    private const double SameTurn = 1e-12;

    private readonly double[] _own;
    private readonly double[] _others;
    private readonly double _tolerance;
    private readonly double[]? _only;
    private readonly double[] _offs;
    private readonly int[] _partner;
    private readonly bool[] _seen;
    private readonly bool[] _meets;
    private List<(double Rotation, int Meeting)>? _weighed;
    private (double Rotation, int Meeting, double Worst)? _best;

    /// <param name="first">The pattern that stays.</param>
    /// <param name="turned">The one that is turned.</param>
    /// <param name="tolerance">By which two holes may differ and still take one screw.</param>
    /// <param name="only">The only turns allowed, each good to the tolerance; null for any.</param>
    public BoltTurns(BoltPattern first, BoltPattern turned, double tolerance, IReadOnlyList<double>? only)
    {
        (_own, _others, _tolerance, _only) = (first.Within, turned.Within, tolerance, only?.ToArray());
        _offs = new double[_own.Length * _others.Length];
        _partner = new int[_others.Length];
        _seen = new bool[_others.Length];
        _meets = new bool[_own.Length];
    }

    /// <summary>Where most holes meet; see <see cref="BoltPattern.Align"/>.</summary>
    public BoltMatch Best()
    {
        foreach (var turn in Turns())
            Try(turn);
        return _best is { } best ? At(best.Rotation) : new BoltMatch(0, new bool[_own.Length], new bool[_others.Length]);
    }

    /// <summary>
    /// How many meet there. What meets at any turn meets, turned back, where the last of it begins to, so that without bounds no other
    /// turns are tried.
    /// </summary>
    public int Most()
    {
        var (most, all) = (0, Math.Min(_own.Length, _others.Length));
        foreach (var a in _own)
        {
            foreach (var b in _others)
            {
                for (var end = -1; end <= (_only is null ? -1 : 1) && most < all; end++)
                {
                    var turn = a - b + (end * _tolerance);
                    if (IsAllowed(turn))
                        most = Math.Max(most, Lay(turn));
                }
            }
        }
        foreach (var turn in _only ?? [])
            most = Math.Max(most, Lay(turn));
        return most;
    }

    // Which holes meet changes only where one of them begins to.
    private IEnumerable<double> Turns()
    {
        var tried = new List<double>();
        foreach (var a in _own)
        {
            foreach (var b in _others)
            {
                for (var end = -1; end <= 1; end++)
                {
                    var turn = a - b + (end * _tolerance);
                    if (IsAllowed(turn) && !tried.Exists(t => IsSame(t, turn)))
                    {
                        tried.Add(turn);
                        yield return turn;
                    }
                }
            }
        }
        foreach (var turn in _only ?? [0])
            yield return turn;
    }

    private void Try(double rotation)
    {
        _weighed ??= [];
        var meeting = Lay(rotation);
        // In the middle between the extreme offsets the worst hole is least off, and every hole still meets, unless holes lie closer than
        // the tolerance.
        var extremes = Extremes();
        var centred = rotation + ((extremes.Low + extremes.High) / 2);
        if (IsAllowed(centred))
        {
            var known = _weighed.FindIndex(w => IsSame(w.Rotation, centred));
            if (known >= 0 && _weighed[known].Meeting >= meeting)
                return;
            if (known < 0 && Lay(centred) is var more && more >= meeting)
                (rotation, meeting, extremes) = (centred, more, Extremes());
        }
        _weighed.Add((rotation, meeting));
        Weigh(rotation, meeting, Math.Max(Math.Abs(extremes.Low), Math.Abs(extremes.High)));
    }

    private void Weigh(double rotation, int meeting, double worst)
    {
        if (_best is not { } best || meeting > best.Meeting || (meeting == best.Meeting && (worst < best.Worst - 1e-9
            || (worst < best.Worst + 1e-9 && Math.Abs(BoltPattern.Signed(rotation)) < Math.Abs(BoltPattern.Signed(best.Rotation)) - 1e-9))))
        {
            _best = (rotation, meeting, worst);
        }
    }

    private static bool IsSame(double turn, double other) => Math.Abs(BoltPattern.Signed(turn - other)) < SameTurn;

    // Which holes meet at one turn. A hole takes one screw, so that no two may share one on the other face: the largest matching, by
    // augmenting paths.
    private int Lay(double rotation)
    {
        for (var i = 0; i < _own.Length; i++)
        {
            for (var j = 0; j < _others.Length; j++)
                _offs[(i * _others.Length) + j] = BoltPattern.Signed(_own[i] - _others[j] - rotation);
        }
        Array.Fill(_partner, -1);
        var meeting = 0;
        for (var i = 0; i < _own.Length; i++)
        {
            Array.Clear(_seen);
            meeting += (_meets[i] = Place(i)) ? 1 : 0;
        }
        return meeting;
    }

    private bool Place(int i)
    {
        for (var j = 0; j < _others.Length; j++)
        {
            if (_seen[j] || Math.Abs(_offs[(i * _others.Length) + j]) > _tolerance + 1e-9)
                continue;
            _seen[j] = true;
            if (_partner[j] >= 0 && !Place(_partner[j]))
                continue;
            _partner[j] = i;
            return true;
        }
        return false;
    }

    private BoltMatch At(double rotation)
    {
        Lay(rotation);
        return new BoltMatch(rotation, (bool[])_meets.Clone(), Array.ConvertAll(_partner, p => p >= 0));
    }

    // How far the holes that meet are off, at the two extremes.
    private (double Low, double High) Extremes()
    {
        double low = double.PositiveInfinity, high = double.NegativeInfinity;
        for (var i = 0; i < _own.Length; i++)
        {
            if (!_meets[i])
                continue;
            var nearest = double.PositiveInfinity;
            foreach (var off in _offs.AsSpan(i * _others.Length, _others.Length))
            {
                if (Math.Abs(off) < Math.Abs(nearest))
                    nearest = off;
            }
            (low, high) = (Math.Min(low, nearest), Math.Max(high, nearest));
        }
        return low > high ? (0, 0) : (low, high);
    }

    private bool IsAllowed(double rotation)
    {
        if (_only is null)
            return true;
        foreach (var allowed in _only)
        {
            if (Math.Abs(BoltPattern.Signed(rotation - allowed)) <= _tolerance + 1e-9)
                return true;
        }
        return false;
    }
}
