using System.CommandLine;
using FitCheck.Evaluation;

namespace FitCheck.Cli.Commands;

/// <summary>Options that several commands share, spelled in one place.</summary>
internal sealed class CommonOptions
{
    public Option<string[]> Catalog { get; } = new("--catalog")
    {
        Description =
            "A catalog folder; give it again to overlay another one, `default` for the one beside the program [default: just that one]",
        HelpName = "DIR",
        AllowMultipleArgumentsPerToken = false,
    };

    public Option<string[]> Rules { get; } = new("--rules")
    {
        Description =
            "A rules folder; give it again to overlay another one, `default` for the one beside the program [default: just that one]",
        HelpName = "DIR",
        AllowMultipleArgumentsPerToken = false,
    };

    public Option<bool> NoColor { get; } = new("--no-color") { Description = "No colour; the environment variable NO_COLOR says the same" };

    public Option<bool> Verbose { get; } = new("--verbose") { Description = "Show what passed too" };

    public Folders Folders(ParseResult parsed) => Folders(parsed.GetValue(Catalog) ?? [], parsed.GetValue(Rules) ?? []);

    /// <summary>The folders that were given, or those beside the program.</summary>
    public static Folders Folders(IReadOnlyList<string> catalog, IReadOnlyList<string> rules)
    {
        var beside = Evaluation.Folders.BesideProgram;
        return new Folders(Given(catalog, beside.Catalog), Given(rules, beside.Rules));
    }

    public static bool Color(bool noColor) =>
        !noColor && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")) && !Console.IsOutputRedirected
            && Environment.GetEnvironmentVariable("TERM") != "dumb";

    private static IReadOnlyList<string> Given(IReadOnlyList<string> folders, IReadOnlyList<string> beside) =>
        folders.Count == 0 ? beside
            : [.. folders.SelectMany(f => f == "default" && !Directory.Exists(f) ? beside : [f.Replace('\\', '/')])];
}
