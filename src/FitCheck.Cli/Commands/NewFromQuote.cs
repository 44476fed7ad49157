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
        Description = "A seller's list as a till or an office program writes it (CSV, text, XLSX): place what is on it",
        HelpName = "LIST"
    };
    private readonly Option<string?> _vehicle = new("--vehicle")
    {
        Description = "The vehicle for which the list or the build is",
        HelpName = "ID"
    };
    private readonly Option<string[]> _at = new(
        "--at")
    { Description = "Where a part of the list goes, where that is not clear; may be given again", HelpName = "ID=POSITION,…" };
    private readonly Option<string[]> _as = new("--as")
    {
        Description = "Which part a line of the list is, where its words leave that open; may be given again",
        HelpName = "LINE=ID"
    };
    private readonly Option<int[]> _skip = new("--skip")
    {
        Description = "A line of the list that is left out; may be given again",
        HelpName = "LINE"
    };
    private readonly CommonOptions _common = new();

    public NewFromQuote(Command build)
    {
        foreach (var option in (Option[])[_from, _vehicle, _at, _as, _skip, _common.Catalog, _common.Rules])
            build.Options.Add(option);
    }

    /// <summary>True when a list was given, or an option that has a meaning only with one.</summary>
    public bool IsAsked(ParseResult parsed) => parsed.GetValue(_from) is not null || parsed.GetValue(_at) is { Length: > 0 }
        || parsed.GetValue(_as) is { Length: > 0 } || parsed.GetValue(_skip) is { Length: > 0 };

    /// <summary>The vehicle that was named; null when none was.</summary>
    public string? Vehicle(ParseResult parsed) => parsed.GetValue(_vehicle);

    public Folders Folders(ParseResult parsed) => _common.Folders(parsed);

    public int Run(ParseResult parsed, Func<string, int> save)
    {
        if (parsed.GetValue(_from) is not { } file)
            return Refusal.Usage("--at, --as and --skip need --from LIST, the list that they are about").Tell();
        if (parsed.GetValue(_vehicle) is not { } vehicle)
            return Refusal.Usage("--from needs --vehicle ID, such as `--vehicle tansy-hatch`").Tell();
        var outcome = Once.Asked(_common.Folders(parsed), o => o.Import(BuildSource.File(file), vehicle, new ImportOptions
        {
            At = parsed.GetValue(_at) ?? [],
            As = parsed.GetValue(_as) ?? [],
            Skip = parsed.GetValue(_skip) ?? [],
        }));
        var status = ProblemLines.Tell(outcome.Problems, Console.Error);
        return outcome.Build is { } build ? save(build) : status;
    }
}
