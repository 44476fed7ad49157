using FitCheck.Yaml;

namespace FitCheck.Rules;

/// <summary>A file under a rules directory, and the id that its path gives it.</summary>
internal sealed record RuleFile(string Path, string Id, string Reported)
{
    private const string Extension = ".yaml";

    private static readonly EnumerationOptions Everything = new() { RecurseSubdirectories = true, MaxRecursionDepth = 8, AttributesToSkip = FileAttributes.Hidden };

    /// <summary>The rule files of a directory in ordinal order of their paths, without those under `schema/`.</summary>
    public static IReadOnlyList<RuleFile> AllOf(string directory, ProblemList problems)
    {
        if (!Directory.Exists(directory))
        {
            problems.Error(new Location(ShownPath.Of(directory), 0, 0), "there is no such directory of rules");
            return [];
        }
        var files = new List<RuleFile>();
        try
        {
            foreach (var path in Directory.EnumerateFiles(directory, "*", Everything))
            {
                var relative = System.IO.Path.GetRelativePath(directory, path).Replace('\\', '/');
                var reported = ShownPath.Of(directory.TrimEnd('/', '\\') + "/" + relative);
                if (relative.StartsWith("schema/", StringComparison.Ordinal))
                    continue;
                if (relative.EndsWith(Extension, StringComparison.Ordinal))
                    files.Add(new RuleFile(path, relative[..^Extension.Length], reported));
                else if (relative.EndsWith(".yml", StringComparison.OrdinalIgnoreCase))
                    problems.Warn(new Location(reported, 0, 0), "not read: the name of a rule file ends in `.yaml`");
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            problems.Error(new Location(ShownPath.Of(directory), 0, 0), "the directory can't be read: " + e.Message);
        }
        files.Sort((a, b) => string.CompareOrdinal(a.Id, b.Id));
        return files;
    }

    /// <summary>The root of its document, or null when it can't be read.</summary>
    public YamlNode? Read(ProblemList problems)
    {
        try
        {
            var length = new FileInfo(Path).Length;
            if (length > SourceText.MaxBytes)
            {
                problems.Error(new Location(Reported, 0, 0), $"the file has {length} bytes; a rule has a few thousand");
                return null;
            }
            return SourceText.Decode(Reported, File.ReadAllBytes(Path), problems) is { } source ? YamlReader.Read(source, problems) : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            problems.Error(new Location(Reported, 0, 0), "the file can't be read: " + e.Message);
            return null;
        }
    }

    /// <summary>True when the rule's id is the one that its path gives it.</summary>
    public bool Names(Rule rule, ProblemList problems)
    {
        if (rule.Id == Id)
            return true;
        problems.Error(rule.PlaceOf("id"), $"the id is `{rule.Id}`, but the file is `{Id}.yaml`; they must be the same");
        return false;
    }
}
