using System.CommandLine;
using FitCheck.Cli.Output;
using FitCheck.Evaluation;
using FitCheck.Foundation;

namespace FitCheck.Cli.Commands;

/// <summary>`fitcheck new build --from quote.csv --vehicle ID`</summary>
internal sealed class NewFromQuote
{
    private readonly Option<string?> _from = new(
        "--from")
    {
        Description = "A seller's list as CSV, an id or a name and a number of packs in each line: place what is on it",
        HelpName = "CSV"
    };
    private readonly Option<string?> _vehicle = new("--vehicle")
    {
        Description = "The vehicle for which the list or the build is",
        HelpName = "ID"
    };
    private readonly Option<string[]> _at = new(
        "--at")
    { Description = "Where a part of the list goes, where that is not clear; may be given again", HelpName = "ID=POSITION,…" };
    private readonly CommonOptions _common = new();

    public NewFromQuote(Command build)
    {
        foreach (var option in (Option[])[_from, _vehicle, _at, _common.Catalog, _common.Rules])
            build.Options.Add(option);
    }

    /// <summary>True when a list was given, or an option that has a meaning only with one.</summary>
    public bool IsAsked(ParseResult parsed) => parsed.GetValue(_from) is not null || parsed.GetValue(_at) is { Length: > 0 };

    /// <summary>The vehicle that was named; null when none was.</summary>
    public string? Vehicle(ParseResult parsed) => parsed.GetValue(_vehicle);

    public Folders Folders(ParseResult parsed) => _common.Folders(parsed);

    public int Run(ParseResult parsed, Func<string, int> save)
    {
        if (parsed.GetValue(_from) is not { } file)
            return Refusal.Usage("--at needs --from CSV, the list whose parts go there").Tell();
        if (parsed.GetValue(_vehicle) is not { } vehicle)
            return Refusal.Usage("--from needs --vehicle ID, such as `--vehicle tansy-hatch`").Tell();
        var outcome = Once.Asked(_common.Folders(parsed), o => o.Import(BuildSource.File(file), vehicle, parsed.GetValue(_at) ?? []));
        var status = ProblemLines.Tell(outcome.Problems, Console.Error);
        return outcome.Build is { } build ? save(build) : status;
    }
}
