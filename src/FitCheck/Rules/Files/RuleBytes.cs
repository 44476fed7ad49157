using System.Text;
using FitCheck.Facts.Values;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;

namespace FitCheck.Rules.Files;

/// <summary>The files of one or more directories of rules, as bytes: what they are known by, before anything of them is parsed.</summary>
internal sealed class RuleBytes
{
    private readonly (string Reported, byte[] Bytes)? _practice;

    // Facts ask for it before the rules are read, and the rules ask again.
    private readonly Lazy<(Practice Practice, IReadOnlyList<Problem> Told)> _read;

    private RuleBytes(IReadOnlyList<File> files, (string Reported, byte[] Bytes)? practice)
    {
        (Files, _practice) = (files, practice);
        _read = new(ReadPractice);
    }

    /// <summary>In the order of the directories, and there in ordinal order of their paths.</summary>
    public IReadOnlyList<File> Files { get; }

    /// <summary>Reads them all; a directory that is missing and a file that can't be read are told.</summary>
    public static RuleBytes Of(IReadOnlyList<string> directories, ProblemList problems)
    {
        var files = new List<File>();
        (string Reported, byte[] Bytes)? practice = null;
        for (var layer = 0; layer < directories.Count; layer++)
        {
            foreach (var file in RuleFile.AllOf(directories[layer], problems))
            {
                if (file.Bytes(problems) is not { } bytes)
                    continue;
                if (file.Id != PracticeReader.Id)
                    files.Add(new File(file, bytes, layer));
                else if (layer == 0)
                    practice = (file.Reported, bytes);
                else
                    problems.Error(new Location(file.Reported, 0, 0), PracticeReader.OnlyFirst, ProblemKind.BrokenRule);
            }
        }
        return new RuleBytes(files, practice);
    }

    /// <summary>The figures of practice; those of the program where the first directory has none, or some with a mistake.</summary>
    public Practice Practice(ProblemList problems)
    {
        problems.AddRange(_read.Value.Told);
        return _read.Value.Practice;
    }

    private (Practice Practice, IReadOnlyList<Problem> Told) ReadPractice()
    {
        var problems = new ProblemList();
        var own = _practice is var (reported, bytes) ? PracticeReader.Read(reported, bytes, problems) : null;
        return (own ?? PracticeReader.OfProgram, problems.Sorted());
    }

    /// <summary>What they are known by: the name of each file with its directory's place, and its bytes.</summary>
    public IEnumerable<byte[]> Parts()
    {
        foreach (var (file, bytes, layer) in Files)
        {
            yield return Encoding.UTF8.GetBytes($"{layer}:{file.Id}");
            yield return bytes;
        }
        yield return _practice?.Bytes ?? [];
    }

    /// <summary>Tells what nobody sees in them.</summary>
    public void TellHidden(ProblemList problems)
    {
        foreach (var (file, bytes, _) in Files)
            HiddenLetters.Tell(file.Reported, 1, bytes, problems);
        if (_practice is var (reported, text))
            HiddenLetters.Tell(reported, 1, text, problems);
    }

    /// <summary>True when the others are the same files with the same bytes.</summary>
    public bool AreAs(RuleBytes others) =>
        (_practice?.Bytes ?? []).AsSpan().SequenceEqual(others._practice?.Bytes) && Files.Count == others.Files.Count
        && Files.Zip(others.Files)
        .All(p => p.First.Rule == p.Second.Rule && p.First.Layer == p.Second.Layer && p.First.Bytes.AsSpan().SequenceEqual(p.Second.Bytes));

    /// <summary>A file, and the place of its directory among all: 0 is the first.</summary>
    internal sealed record File(RuleFile Rule, byte[] Bytes, int Layer);
}
