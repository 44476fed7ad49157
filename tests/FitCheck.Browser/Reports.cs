using System.Collections.Concurrent;
using System.Diagnostics;
using Xunit;

namespace FitCheck.Browser;

/// <summary>HTML reports, made by the program as a user would make them; each build is checked once.</summary>
public sealed class Reports : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fitcheck-browser-");
    private readonly ConcurrentDictionary<string, Lazy<string>> _made = new(StringComparer.Ordinal);

    /// <summary>The HTML file for a build of the catalog.</summary>
    public string Html(string build) => _made.GetOrAdd(build, b => new(() => Make(b, "report", "--format", "html", "--output"))).Value;

    /// <summary>The installation sheet for a build of the catalog.</summary>
    public string Sheet(string build) => _made.GetOrAdd("sheet of " + build, _ => new(() => Make(build, "sheet", "--sheet"))).Value;

    /// <summary>The page that a command makes of these builds of the catalog.</summary>
    public string Page(string command, params string[] builds) => _made.GetOrAdd($"{command} {string.Join(' ', builds)}", _ => new(() =>
    {
        var html = Path.Combine(_folder.FullName, $"page-{_made.Count}.html");
        Run([.. command.Split(' '), .. builds.Select(BuildFile), "--format", "html", "--output", html]);
        return html;
    })).Value;

    /// <summary>One page of every build of the catalog.</summary>
    public string OfAllBuilds() =>
        Page("check",
            [.. Directory.EnumerateFiles(Path.Combine(Root(), "catalog", "builds"), "*.yaml").Select(f => Path.GetFileName(f))
                .Order(StringComparer.Ordinal)]);

    /// <summary>The program's standard output for a build in another format.</summary>
    public static string Output(string build, string format) => Run("check", BuildFile(build), "--format", format);

    public void Dispose() => _folder.Delete(recursive: true);

    private string Make(string build, string what, params string[] options)
    {
        var html = Path.Combine(_folder.FullName, $"{what}-{Path.ChangeExtension(build, ".html")}");
        var said = Run(["check", BuildFile(build), .. options, html]);
        Assert.True(File.Exists(html), $"`fitcheck check {build} {string.Join(' ', options)}` wrote no {what}. It said:\n{said}");
        return html;
    }

    /// <summary>Where a build of the catalog lies.</summary>
    public static string BuildOfCatalog(string build) => BuildFile(build);

    private static string BuildFile(string build)
    {
        var file = Path.Combine(Root(), "catalog", "builds", build);
        Assert.True(File.Exists(file), $"There is no catalog/builds/{build}.");
        return file;
    }

    /// <summary>The program, as the runtime starts it.</summary>
    public static string Program()
    {
        var program = Path.Combine(Root(), "src", "FitCheck.Cli", "bin", Configuration(), "net10.0", "fitcheck.dll");
        Assert.True(File.Exists(program), $"There is no {program}: build the solution first.");
        return program;
    }

    private static string Run(params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet", [Program(), .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
            WorkingDirectory = Root(),
        };
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        // 1 is an honest answer: something of the build fails.
        Assert.True(process.ExitCode is 0 or 1,
            $"`fitcheck {string.Join(' ', arguments)}` ended with {process.ExitCode}:\n{error.Result}{output}");
        return output;
    }

    // bin/CONFIGURATION/net10.0/
    private static string Configuration() => new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name;

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "FitCheck.sln")))
            folder = folder.Parent ?? throw new InvalidOperationException("The tests must run from inside the repository.");
        return folder.FullName;
    }
}
