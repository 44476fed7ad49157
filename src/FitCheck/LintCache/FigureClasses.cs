using FitCheck.Facts.Entries;

namespace FitCheck.LintCache;

/// <summary>
/// The classes of figures of a catalog, each under a number, which notes write instead of its words. Several threads may ask at once.
/// </summary>
internal sealed class FigureClasses
{
    private readonly Dictionary<FigureClass, int> _numbers = [];
    private readonly List<FigureClass> _classes = [];
    private readonly Lock _adding = new();

    public int Count => _classes.Count;

    public FigureClass this[int number]
    {
        get
        {
            lock (_adding)
                return _classes[number];
        }
    }

    /// <summary>The number of a class, which it gets when it is first asked for.</summary>
    public int NumberOf(FigureClass own)
    {
        lock (_adding)
        {
            if (!_numbers.TryGetValue(own, out var number))
            {
                _numbers[own] = number = _classes.Count;
                _classes.Add(own);
            }
            return number;
        }
    }

    public void Write(CacheWriter to)
    {
        to.Write7BitEncodedInt(_classes.Count);
        foreach (var (figure, name, unit) in _classes)
        {
            to.Write(figure);
            to.Write(name);
            to.Write(unit);
        }
    }

    public static FigureClasses Read(ref CacheReader from)
    {
        var classes = new FigureClasses();
        for (var count = from.Number(); count > 0; count--)
            classes.NumberOf(new FigureClass(from.Text(), from.Text(), from.Text()));
        return classes;
    }
}
