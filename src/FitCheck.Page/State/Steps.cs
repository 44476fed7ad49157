namespace FitCheck.Page.State;

/// <summary>Steps one behind the other; the last one is the next to be made.</summary>
internal sealed record Steps(IReadOnlyList<Step> All)
{
    // Enough for an evening, and small enough to travel.
    private const int Most = 60;
    private const int MostLetters = 200_000;

    public static Steps None { get; } = new([]);

    /// <summary>With one more; the oldest go where there are too many.</summary>
    public Steps With(Step step)
    {
        var all = All.Append(step).ToList();
        while (all.Count > 1 && (all.Count > Most || all.Sum(s => s.Text.Length) > MostLetters))
            all.RemoveAt(0);
        return new(all);
    }

    /// <summary>Without the last one.</summary>
    public Steps Rest => new([.. All.SkipLast(1)]);

    public override string ToString() => string.Join(' ', All);

    /// <summary>The steps of a field; none where anything in it is no step.</summary>
    public static Steps Parse(string written)
    {
        var all = new List<Step>();
        foreach (var word in written.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (all.Count == Most || Step.Parse(word) is not { } step)
                return None;
            all.Add(step);
        }
        return new(all);
    }
}
