using System.Text;
using FitCheck.Facts.Values;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Rules.Model;
using FitCheck.Yaml;

namespace FitCheck.Rules.Files;

/// <summary>A file under a rules directory, and the id that its path gives it.</summary>
internal sealed record RuleFile(string Path, string Id, string Reported)
{
    private const string Extension = ".yaml";

    private const int MostFolders = 8;

    /// <summary>The rule files of a directory in ordinal order of their paths, without those under `schema/`.</summary>
    public static IReadOnlyList<RuleFile> AllOf(string directory, ProblemList problems)
    {
        if (!Directory.Exists(directory))
        {
            problems.Error(new Location(ShownPath.Of(directory), 0, 0), "there is no such directory of rules", ProblemKind.Unreadable);
            return [];
        }
        var files = new List<RuleFile>();
        foreach (var (path, _, _) in InputFolder.Files(directory, directory, [Extension, ".yml", ".YML"], problems, hidden: false,
            MostFolders))
        {
            var relative = System.IO.Path.GetRelativePath(directory, path).Replace('\\', '/');
            var reported = ShownPath.Of(directory.TrimEnd('/', '\\') + "/" + relative);
            if (relative.StartsWith("schema/", StringComparison.Ordinal))
                continue;
            if (relative.EndsWith(Extension, StringComparison.Ordinal))
                files.Add(new RuleFile(path, relative[..^Extension.Length], reported));
            else
                problems.Warn(new Location(reported, 0, 0), "not read: the name of a rule file ends in `.yaml`", ProblemKind.NotRead);
        }
        files.Sort((a, b) => string.CompareOrdinal(a.Id, b.Id));
        return files;
    }

    /// <summary>What is in it; null when it can't be read.</summary>
    public byte[]? Bytes(ProblemList problems) => InputFile.Bytes(Path, Reported, problems);

    /// <summary>The root of a document with these bytes, or null when it can't be read.</summary>
    /// <param name="bytes">What is in the file.</param>
    /// <param name="problems">Where mistakes are told.</param>
    /// <param name="examples">False when nobody asks for the examples, which are nearly half of a rule.</param>
    public YamlNode? Read(byte[] bytes, ProblemList problems, bool examples = true) =>
        SourceText.Decode(Reported, bytes, problems) is { } source ? YamlReader.Read(examples ? source : WithoutExamples(source), problems)
            : null;

    /// <summary>What the rule is plainly about; null where it takes a closer look.</summary>
    public static Subject? SubjectOf(ReadOnlySpan<byte> bytes)
    {
        var start = bytes.IndexOf("\nsubject: "u8);
        if (start < 0)
            return null;
        var rest = bytes[(start + "\nsubject: ".Length)..];
        var end = rest.IndexOfAny((byte)'\n', (byte)'\r', (byte)' ');
        return end > 0 ? SubjectWords.Parse(Encoding.UTF8.GetString(rest[..end])) : null;
    }

    // Only where they stand last, as they do by custom: what follows is indented, an item, a comment or empty.
    private static SourceText WithoutExamples(SourceText source)
    {
        const string key = "\nexamples:";
        var text = source.Text;
        var start = text.IndexOf(key, StringComparison.Ordinal);
        if (start < 0)
            return source;
        for (var end = text.IndexOf('\n', start + 1); end >= 0 && end + 1 < text.Length; end = text.IndexOf('\n', end + 1))
        {
            if (text[end + 1] is not (' ' or '-' or '#' or '\r' or '\n'))
                return source;
        }
        return source with { Text = string.Concat(text.AsSpan(0, start), key, " []") };
    }

    /// <summary>True when the rule's id is the one that its path gives it.</summary>
    public bool Names(Rule rule, ProblemList problems)
    {
        if (rule.Id == Id)
            return true;
        problems.Error(rule.PlaceOf("id"), $"the id is `{rule.Id}`, but the file is `{Id}.yaml`; they must be the same",
            ProblemKind.BrokenRule);
        return false;
    }
}
