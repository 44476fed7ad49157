namespace FitCheck.Evaluation;

/// <summary>Refuses what no caller can have meant: an empty list of builds would pass every check.</summary>
internal static class Arguments
{
    /// <summary>The words; a list that is null, empty, or holds a word that is null or empty is refused.</summary>
    public static IReadOnlyList<string> Words(IReadOnlyList<string>? words, string name, bool mayBeEmpty = false)
    {
        ArgumentNullException.ThrowIfNull(words, name);
        if (words.Count == 0 && !mayBeEmpty)
            throw new ArgumentException("the list is empty", name);
        for (var i = 0; i < words.Count; i++)
        {
            if (string.IsNullOrEmpty(words[i]))
                throw new ArgumentException($"item {i} of the list is {(words[i] is null ? "null" : "empty")}", name);
        }
        return words;
    }

    /// <summary>The value; null is refused.</summary>
    public static T Given<T>(T? value, string name) where T : class => value ?? throw new ArgumentNullException(name);

    /// <summary>Refuses a time that is over before it begins.</summary>
    public static void AboveZero(TimeSpan time, string name) =>
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(time, TimeSpan.Zero, name);

    /// <summary>The builds; a list that is null, empty, or holds a null is refused.</summary>
    public static IReadOnlyList<BuildSource> Builds(IReadOnlyList<BuildSource>? builds, string name)
    {
        ArgumentNullException.ThrowIfNull(builds, name);
        if (builds.Count == 0)
            throw new ArgumentException("the list of builds is empty, and no build passes no check", name);
        for (var i = 0; i < builds.Count; i++)
        {
            if (builds[i] is null)
                throw new ArgumentException($"item {i} of the list is null", name);
        }
        return builds;
    }
}
