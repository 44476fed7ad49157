using FitCheck.Foundation.Problems;

namespace FitCheck.Rules.Files;

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
        for (var layer = 0; layer < directories.Count; layer++)
        {
            foreach (var file in RuleFile.AllOf(directories[layer], problems))
            {
                if (file.Bytes(problems) is { } bytes)
                    files.Add(new File(file, bytes, layer));
            }
        }
        return new RuleBytes(files);
    }

    /// <summary>True when the others are the same files with the same bytes.</summary>
    public bool AreAs(RuleBytes others) => Files.Count == others.Files.Count
        && Files.Zip(others.Files)
        .All(p => p.First.Rule == p.Second.Rule && p.First.Layer == p.Second.Layer && p.First.Bytes.AsSpan().SequenceEqual(p.Second.Bytes));

    /// <summary>A file, and the place of its directory among all: 0 is the first.</summary>
    internal sealed record File(RuleFile Rule, byte[] Bytes, int Layer);
}
