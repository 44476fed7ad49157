using System.CommandLine;
using FitCheck.Cli.Asking;
using FitCheck.Cli.Output;
using FitCheck.Evaluation;

namespace FitCheck.Cli.Commands;

/// <summary>`fitcheck new build --from quote.csv --vehicle ID`</summary>
internal sealed class NewFromQuote
{
    private readonly Option<string?> _from = new("--from")
    {
        Description = "A seller's list as a till or an office program writes it (CSV, text, XLSX): place what is on it",
        HelpName = "LIST"
    };
    private readonly QuoteOptions _quote = new("The vehicle for which the list or the build is");
    private readonly CommonOptions _common = new();

    public NewFromQuote(Command build)
    {
        build.Options.Add(_from);
        _quote.AddTo(build);
        build.Options.Add(_common.Catalog);
        build.Options.Add(_common.Rules);
    }

    /// <summary>True when a list was given, or an option that has a meaning only with one.</summary>
    public bool IsAsked(ParseResult parsed) => parsed.GetValue(_from) is not null || _quote.AreAsked(parsed);

    /// <summary>The vehicle that was named; null when none was.</summary>
    public string? Vehicle(ParseResult parsed) => parsed.GetValue(_quote.Vehicle);

    public Folders Folders(ParseResult parsed) => _common.Folders(parsed);

    /// <summary>The options that name catalogs and rules, as a command line repeats them.</summary>
    public string Named(ParseResult parsed) => string.Concat(
        (parsed.GetValue(_common.Catalog) ?? []).Select(f => $" --catalog {NewBuild.Quoted(f)}")
            .Concat((parsed.GetValue(_common.Rules) ?? []).Select(f => $" --rules {NewBuild.Quoted(f)}")));

    public int Run(ParseResult parsed, Func<string, int> save)
    {
        if (parsed.GetValue(_from) is not { } file)
            return Refusal.Usage("--at, --as, --skip and --articles need --from LIST, the list that they are about").Tell();
        if (_quote.Request(parsed) is not { } request)
            return Refusal.Usage("--from needs --vehicle ID, such as `--vehicle tansy-hatch`").Tell();
        var outcome = Once.Asked(_common.Folders(parsed), o => o.Import(BuildSource.File(file), request));
        var status = ProblemLines.Tell(outcome.Problems, Console.Error);
        return outcome.Build is { } build ? save(build) : status;
    }
}
