using FitCheck.Facts.Entries;

namespace FitCheck.LintCache;

/// <summary>The figures of one class among the notes: their values, and where each of them stands.</summary>
internal sealed class SampledClass
{
    private readonly IReadOnlyList<CachedEntry> _entries;
    private readonly FigureClasses _classes;
    private readonly double[] _values;
    private readonly int[] _entry;
    private readonly int[] _place;
    private int _count;

    private SampledClass(int number, int count, IReadOnlyList<CachedEntry> entries, FigureClasses classes)
    {
        (Number, Class, _entries, _classes) = (number, classes[number], entries, classes);
        (_values, _entry, _place) = (new double[count], new int[count], new int[count]);
    }

    public int Number { get; }

    public FigureClass Class { get; }

    public int Count => _count;

    public FigureFacts Facts() => new(Class, _values, i => _entries[_entry[i]].Open(_classes).Samples[_place[i]]);

    /// <summary>The classes of entries with their figures in the order of the entries.</summary>
    /// <param name="entries">The entries.</param>
    /// <param name="classes">What the numbers of classes mean.</param>
    /// <param name="wanted">The classes that are asked for; null for all.</param>
    public static IReadOnlyList<SampledClass> Of(IReadOnlyList<CachedEntry> entries, FigureClasses classes, HashSet<int>? wanted)
    {
        if (wanted is { Count: 0 })
            return [];
        var counts = new int[classes.Count];
        foreach (var entry in entries)
        {
            for (var samples = entry.Samples(); samples.Next(out var number, out _);)
                counts[number]++;
        }
        var sampled = new SampledClass?[counts.Length];
        for (var i = 0; i < counts.Length; i++)
            sampled[i] = counts[i] > 0 && wanted?.Contains(i) != false ? new SampledClass(i, counts[i], entries, classes) : null;
        for (var i = 0; i < entries.Count; i++)
        {
            var place = 0;
            for (var samples = entries[i].Samples(); samples.Next(out var number, out var value); place++)
                sampled[number]?.Add(value, i, place);
        }
        return [.. sampled.OfType<SampledClass>()];
    }

    private void Add(double value, int entry, int place)
    {
        (_values[_count], _entry[_count], _place[_count]) = (value, entry, place);
        _count++;
    }
}
