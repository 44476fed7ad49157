using System.Diagnostics;
using FitCheck.Cli.Revisions;
using FitCheck.Foundation.Files;
using Xunit;

namespace FitCheck.Tests.Hostile;

/// <summary>What a run leaves that is killed outright is taken away by the next, and nothing that somebody still needs.</summary>
public sealed class LeftoverTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Parts_of_files_go_when_their_process_is_gone()
    {
        const string prefix = ".fitcheck-";
        var own = PassingName.Of(prefix);
        string dead = Dead(own) + "x.part", living = own + "x.part", elsewhere = prefix + "00000000-" + Gone() + "-x.part";
        foreach (var name in (string[])[dead, living, elsewhere, ".fitcheck-notes.part", "mine.part"])
            _folder.Write(name, "half");

        AtomicFile.Write(_folder.Of("r.txt"), "whole"u8.ToArray());

        Assert.Equal(new[] { living, elsewhere, ".fitcheck-notes.part", "mine.part", "r.txt" }.Order(StringComparer.Ordinal),
            Directory.GetFiles(_folder.Path).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Folders_of_revisions_go_when_their_process_is_gone()
    {
        if (!OperatingSystem.IsLinux())
            return;
        var own = PassingName.Of("fitcheck-revision-");
        var dead = Directory.CreateDirectory(Path.Combine(Path.GetTempPath(), Dead(own) + Path.GetRandomFileName()));
        var living = Directory.CreateDirectory(Path.Combine(Path.GetTempPath(), own + Path.GetRandomFileName()));
        var link = Path.Combine(Path.GetTempPath(), Dead(own) + Path.GetRandomFileName());
        _folder.Write("kept/x.yaml", "x");
        Directory.CreateSymbolicLink(link, _folder.Of("kept"));
        File.WriteAllText(Path.Combine(dead.FullName, "x.yaml"), "x");
        try
        {
            using (var folders = new TemporaryFolders())
                folders.New();
            Assert.False(Directory.Exists(dead.FullName));
            Assert.True(Directory.Exists(living.FullName));
            Assert.True(File.Exists(_folder.Of("kept/x.yaml")));
            Assert.NotNull(new DirectoryInfo(link).LinkTarget);
        }
        finally
        {
            living.Delete();
            File.Delete(link);
        }
    }

    private static string Dead(string name) =>
        name.Replace($"-{Environment.ProcessId}-", $"-{Gone()}-", StringComparison.Ordinal);

    // The number of a process that has ended; numbers come round again only after thousands of others.
    private static int Gone()
    {
        using var process = Process.Start("true");
        process.WaitForExit();
        return process.Id;
    }
}
