using System.Diagnostics;

namespace FitCheck.Hostile;

/// <summary>A folder in which a command runs and is killed, with what it reads; the same each time.</summary>
internal sealed class KillFolder
{
    private const string Program = "fitcheck.dll";
    private static readonly string[] NotOurs = ["cache", ".git", "tmp"];

    public KillFolder(string path, Killed killed)
    {
        Path = path;
        Write("b.yaml", Catalog("builds/tansy-bare-tweeter.yaml"));
        Write("open.yaml", Catalog("builds/alder-missing-data.yaml"));
        Write("list.csv", "id;packs;note\ncup-45-tansy;1;\norrin-t25;1;\n");
        Write("shop.csv", "article,part\n17,orrin-t25\n");
        Write("own/cups/one.yaml", Cup("one").Replace("hole: 45 mm", "hole: 45mm", StringComparison.Ordinal) + "  \n");
        Write("own/cups/two.yaml", Cup("two").Replace("hole: 45 mm", "hole: 45mm", StringComparison.Ordinal));
        Write("state/catalog/sundries/foam-tape-3x12.yaml", Catalog("sundries/foam-tape-3x12.yaml"));
        Write("catalog/sundries/foam-tape-3x12.yaml", Catalog("sundries/foam-tape-3x12.yaml"));
        Write("cups.csv", "id;name;hole;pack;price;availability;provenance;source\n"
            + "mine;A cup;45 mm;2;14.90 EUR;current;datasheet;Its sheet\n");
        foreach (var old in killed.Old)
            Write(old, "yesterday's\n");
        Directory.CreateDirectory(Of("made"));
        Directory.CreateDirectory(Of("tmp"));
        if (Array.Exists(killed.Words, w => w == "HEAD"))
        {
            Wait("git", "init", "-q");
            Wait("git", "add", "catalog");
            Wait("git", "-c", "user.name=x", "-c", "user.email=x@x", "commit", "-q", "-m", "x");
        }
    }

    public string Path { get; }

    /// <summary>Names and texts of all that stands there, but for notes, git's own and what is temporary.</summary>
    public Dictionary<string, string> Files() => Directory.GetFiles(Path, "*", SearchOption.AllDirectories)
        .Select(f => System.IO.Path.GetRelativePath(Path, f)).Where(f => !NotOurs.Contains(f.Split('/')[0]))
        .ToDictionary(f => f, f => File.ReadAllText(Of(f)), StringComparer.Ordinal);

    /// <summary>What nobody asked for: parts of files, and folders of revisions.</summary>
    public IReadOnlyList<string> Left() =>
        [.. Directory.GetFiles(Path, "*.part", SearchOption.AllDirectories), .. Directory.GetDirectories(Of("tmp"), "fitcheck-*")];

    public Process Start(Killed killed)
    {
        string[] words = [System.IO.Path.Combine(AppContext.BaseDirectory, Program), .. killed.Words];
        // A terminal of its own, which `script` of util-linux makes; no shell stays between it and the program.
        var start = killed.Typed is null ? new ProcessStartInfo("dotnet", words)
            : new ProcessStartInfo("script", ["-qefc", $"exec dotnet {string.Join(' ', words)}", "/dev/null"]);
        start = new ProcessStartInfo(start.FileName, start.ArgumentList)
        {
            WorkingDirectory = Path,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        start.Environment["FITCHECK_CACHE"] = Of("cache");
        start.Environment["TMPDIR"] = Of("tmp");
        start.Environment["TERM"] = "xterm-256color";
        // The runtime's own leavings.
        start.Environment["DOTNET_EnableDiagnostics"] = "0";
        var process = Process.Start(start)!;
        if (killed.Typed is { } typed)
        {
            process.StandardInput.Write(typed);
            process.StandardInput.Flush();
        }
        else
            process.StandardInput.Close();
        return process;
    }

    /// <summary>Runs it to its end: its status, and what it said on standard error.</summary>
    public (int Status, string Error) Run(Killed killed)
    {
        using var process = Start(killed);
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEnd();
        _ = output.Result;
        process.WaitForExit();
        // A terminal has one end for both.
        return (process.ExitCode, killed.Typed is null ? error : output.Result);
    }

    private static string Catalog(string file) => File.ReadAllText(System.IO.Path.Combine(AppContext.BaseDirectory, "catalog", file));

    private static string Cup(string id) =>
        Catalog("cups/cup-45-tansy.yaml").Replace("id: cup-45-tansy", $"id: {id}", StringComparison.Ordinal);

    private string Of(string name) => System.IO.Path.Combine(Path, name);

    private void Write(string name, string text)
    {
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(Of(name))!);
        File.WriteAllText(Of(name), text);
    }

    private void Wait(string program, params string[] words)
    {
        using var process = Process.Start(new ProcessStartInfo(program, words) { WorkingDirectory = Path })!;
        process.WaitForExit();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{program} {string.Join(' ', words)}");
    }
}
