namespace FitCheck.Builds;

/// <summary>
/// Cuts runs of cable from rolls: a run is one piece, so rests of several rolls are never added up (the cutting-stock problem with one
/// length of roll). A run that is longer than a roll takes whole rolls and a piece, so that it is counted; that it would have a joint is
/// for a rule to say.
/// </summary>
internal static class CableCutting
{
    // Tenths of a millimetre, so that sums are exact.
    private const double PerMetre = 10_000;

    // Enough to prove the least number for the runs of any vehicle; beyond, what was found by then counts.
    private const int MostTries = 200_000;

    /// <summary>The least number of rolls that these runs can be cut from.</summary>
    /// <param name="runs">Lengths, m.</param>
    /// <param name="roll">Length of a roll, m, above zero.</param>
    public static int Rolls(IEnumerable<double> runs, double roll)
    {
        var length = (long)Math.Round(roll * PerMetre);
        if (length <= 0)
            return 0;
        var whole = 0L;
        var pieces = new List<long>();
        foreach (var run in runs.Select(r => (long)Math.Round(r * PerMetre)).OrderDescending())
        {
            whole += run / length;
            if (run % length > 0)
                pieces.Add(run % length);
        }
        pieces.Sort((a, b) => b.CompareTo(a));
        return (int)whole + new Cutter(pieces, length).Least();
    }

    // Tries the longest piece first on every roll that is begun, and on a new one; what can't become better than the best so far is left.
    private sealed class Cutter(List<long> pieces, long roll)
    {
        private readonly List<long> _left = [];
        private int _best;
        private int _tries;

        public int Least()
        {
            _best = pieces.Count;
            Place(0);
            return _best;
        }

        private void Place(int index)
        {
            if (_left.Count >= _best || ++_tries > MostTries)
                return;
            if (index == pieces.Count)
            {
                _best = _left.Count;
                return;
            }
            if (_left.Count + ((Math.Max(0, pieces.Skip(index).Sum() - _left.Sum()) + roll - 1) / roll) >= _best)
                return;
            for (var i = 0; i < _left.Count; i++)
            {
                // Rolls with the same rest are alike.
                if (_left[i] < pieces[index] || _left.IndexOf(_left[i]) < i)
                    continue;
                _left[i] -= pieces[index];
                Place(index + 1);
                _left[i] += pieces[index];
            }
            _left.Add(roll - pieces[index]);
            Place(index + 1);
            _left.RemoveAt(_left.Count - 1);
        }
    }
}
