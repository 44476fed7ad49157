using System.CommandLine;
using FitCheck.Cli.Output;
using FitCheck.Evaluation;
using FitCheck.Physics.Quantities;

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

    /// <summary>In which units lengths are told.</summary>
    public Option<string?> Units { get; } = new Option<string?>("--units")
    {
        Description = "Tell lengths in mm or inch [default: as the build says in `units`, else mm]; JSON and its like stay in mm",
        HelpName = "mm|inch",
    }.Among("mm", "inch");

    public Option<bool> NoColor { get; } = new("--no-color") { Description = "No colour; the environment variable NO_COLOR says the same" };

    public Option<bool> Verbose { get; } = new("--verbose") { Description = "Show what passed too" };

    public Option<string?> For { get; } = new("--for")
    {
        Description = "For whom the page is, such as a name or an order's number; else a line to fill in on paper",
        HelpName = "NAME",
    };

    /// <summary>The name that `--for` gives, on one line; null when it says nothing.</summary>
    public static string? Customer(string? name) => string.IsNullOrWhiteSpace(name) ? null : Reports.Wording.PlainText.Line(name).Trim();

    /// <summary>Why `--for` can't be heeded; null when it is, or was not given.</summary>
    public static string? Unheeded(string? name, Output.OutputTargets targets) => name is null || targets.Have("html") ? null
        : "--for writes a name on the page to print: give --format html with it";

    /// <summary>What was asked for; null for nothing.</summary>
    public LengthUnits? Told(ParseResult parsed) => UnitsOfFormats.Parse(parsed.GetValue(Units));

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
