using FitCheck.Foundation.Files;

namespace FitCheck.Cli.Output;

/// <summary>
/// Finds what would be lost when a command writes its files: something that it reads, or one of two outputs. Asked before any work is done.
/// </summary>
internal static class Overwriting
{
    /// <summary>
    /// Why the outputs can't be written; null when nothing is lost by it. Wrong usage when the words alone tell, else what stands on the
    /// disk is in the way.
    /// </summary>
    /// <param name="outputs">Options and the files that they name.</param>
    /// <param name="named">Files that the command line names to be read.</param>
    /// <param name="read">Files that are read besides; looked for only when an output exists.</param>
    /// <param name="edited">The output whose job is to take the place of one of those named; null for none.</param>
    public static Refusal? Of(IReadOnlyList<(string Option, string File)> outputs, IEnumerable<string> named, IEnumerable<string> read,
        string? edited = null)
    {
        if (outputs.Count == 0)
            return null;
        var inputs = named.ToList();
        var words = inputs.Select(Path.GetFullPath).ToHashSet(StringComparer.Ordinal);
        if (outputs.FirstOrDefault(o => o.File != edited && words.Contains(Path.GetFullPath(o.File))) is { File: { } same })
            return Refusal.Usage($"{Path.GetFileName(same)} is read; name another file for what is written");
        return TwiceInWords(outputs) ?? OneFile(outputs) ?? Read(outputs.Where(o => o.File != edited), inputs) ?? Read(outputs, read);
    }

    private static Refusal? TwiceInWords(IReadOnlyList<(string Option, string File)> outputs) =>
        outputs.GroupBy(o => Path.GetFullPath(o.File), StringComparer.Ordinal)
            .FirstOrDefault(g => g.Count() > 1)?.ToList() is [var first, var second, ..]
            ? Refusal.Usage(
            $"{Path.GetFileName(first.File)} is named twice{(first.Option == second.Option ? $" by {first.Option}" : $", by "
                + $"{first.Option} and by {second.Option}")}") : null;

    private static Refusal? OneFile(IReadOnlyList<(string Option, string File)> outputs)
    {
        var taken = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (_, file) in outputs)
        {
            if (SameFile.Key(file) is { } key && !taken.TryAdd(key, file))
                return Refusal.Input($"{taken[key]} and {file} are one file; name another for one of them");
        }
        return null;
    }

    private static Refusal? Read(IEnumerable<(string Option, string File)> outputs, IEnumerable<string> inputs)
    {
        var existing = outputs.Where(o => File.Exists(o.File)).Select(o => (o.File, Key: SameFile.Key(o.File)))
            .Where(o => o.Key is not null).DistinctBy(o => o.Key).ToDictionary(o => o.Key!, o => o.File, StringComparer.Ordinal);
        if (existing.Count == 0)
            return null;
        foreach (var input in inputs)
        {
            if (SameFile.KeyOfInput(input) is { } key && existing.TryGetValue(key, out var file))
                return Refusal.Input(
                    $"{file} is {(Path.GetFullPath(file) == Path.GetFullPath(input) ? "" : $"the same file as "
                        + $"{input}, which is ")}read; name another file for what is written");
        }
        return null;
    }
}
