using System.Diagnostics;
using FitCheck.Tests.Cli;

namespace FitCheck.Tests.Impacts;

/// <summary>A git repository of its own with the repository's catalog and rules, and a change on top of them.</summary>
internal sealed class PullRequest : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public PullRequest()
    {
        foreach (var kind in new[] { "catalog", "rules" })
            Copy(RepositoryRoot.Of(kind), _folder.Of(kind));
        Git("init", "-q", "-b", "main");
        Commit("as it was");
    }

    public string Path => _folder.Path;

    public PullRequest Change(string file, string old, string now)
    {
        var path = _folder.Of(file);
        var text = File.ReadAllText(path);
        Xunit.Assert.Contains(old, text, StringComparison.Ordinal);
        File.WriteAllText(path, text.Replace(old, now, StringComparison.Ordinal));
        return this;
    }

    /// <summary>A driver of 64 mm gets this depth, in mm, on its sheet and on its drawing.</summary>
    public PullRequest Deeper(string driver, int depth) =>
        Change(driver, "depth: 64 mm", $"depth: {depth} mm").Change(driver, "- [64 mm, ", $"- [{depth} mm, ");

    public PullRequest Write(string file, string text)
    {
        _folder.Write(file, text);
        return this;
    }

    public PullRequest Delete(string file)
    {
        File.Delete(_folder.Of(file));
        return this;
    }

    public PullRequest Move(string file, string to)
    {
        _folder.Write(to, File.ReadAllText(_folder.Of(file)));
        return Delete(file);
    }

    /// <summary>Puts a copy of the catalog and the rules, as they are now, into a folder of this name.</summary>
    public PullRequest Copied(string folder)
    {
        foreach (var kind in new[] { "catalog", "rules" })
            Copy(_folder.Of(kind), _folder.Of($"{folder}/{kind}"));
        return this;
    }

    public void Commit(string message)
    {
        Git("add", "-A");
        Git("-c", "user.name=tester", "-c", "user.email=tester@example.invalid", "commit", "-q", "-m", message);
    }

    public (int Status, string Out, string Error) Impact(params string[] arguments) => Run.Of(Path, ["impact", .. arguments]);

    public void Dispose()
    {
        foreach (var file in Directory.EnumerateFiles(Path, "*", SearchOption.AllDirectories))
            File.SetAttributes(file, FileAttributes.Normal);
        _folder.Dispose();
    }

    public void Git(params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo("git", ["-C", Path, .. arguments]) { UseShellExecute = false })!;
        process.WaitForExit();
        Xunit.Assert.Equal(0, process.ExitCode);
    }

    private static void Copy(string from, string to)
    {
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var copy = System.IO.Path.Combine(to, System.IO.Path.GetRelativePath(from, file));
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
    }
}
