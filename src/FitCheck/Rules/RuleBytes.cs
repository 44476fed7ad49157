using FitCheck.Yaml;

namespace FitCheck.Rules;

/// <summary>The files of one or more directories of rules, as bytes: what they are known by, before anything of them is parsed.</summary>
internal sealed class RuleBytes
{
    private RuleBytes(IReadOnlyList<File> files) => Files = files;

    /// <summary>In the order of the directories, and there in ordinal order of their paths.</summary>
    public IReadOnlyList<File> Files { get; }

    /// <summary>Reads them all; a directory that is missing and a file that can't be read are told.</summary>
    public static RuleBytes Of(IReadOnlyList<string> directories, ProblemList problems)
    {
        var files = new List<File>();
        foreach (var directory in directories)
        {
            foreach (var file in RuleFile.AllOf(directory, problems))
            {
                if (file.Bytes(problems) is { } bytes)
                    files.Add(new File(file, bytes));
            }
        }
        return new RuleBytes(files);
    }

    internal sealed record File(RuleFile Rule, byte[] Bytes);
}
