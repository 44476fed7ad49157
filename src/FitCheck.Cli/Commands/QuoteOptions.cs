using System.CommandLine;

namespace FitCheck.Cli.Commands;

/// <summary>A seller's list that stands for a build: for which vehicle, and what the caller knows of its lines.</summary>
/// <param name="Vehicle">Its id.</param>
/// <param name="Options">What is known of the lines.</param>
/// <param name="Articles">The file of the shop's article numbers, which is read and extended; null for none.</param>
internal sealed record QuoteRequest(string Vehicle, ImportOptions Options, string? Articles = null);

/// <summary>The options that say how a seller's list becomes a build.</summary>
internal sealed class QuoteOptions(string vehicleMeans)
{
    public Option<string?> Vehicle { get; } = new("--vehicle") { Description = vehicleMeans, HelpName = "ID" };

    public Option<string[]> At { get; } = new("--at")
    {
        Description = "Where a part of the list goes, where that is not clear; may be given again",
        HelpName = "ID=POSITION,…"
    };

    public Option<string[]> As { get; } = new("--as")
    {
        Description = "Which part a line of the list is, where its words leave that open; may be given again",
        HelpName = "LINE=ID"
    };

    public Option<int[]> Skip { get; } = new("--skip")
    {
        Description = "A line of the list that is left out; may be given again",
        HelpName = "LINE"
    };

    public Option<string?> Articles { get; } = new("--articles")
    {
        Description = "The shop's own article numbers (CSV: article, part): read, and extended by what the list or you say for certain",
        HelpName = "FILE"
    };

    /// <summary>Gives them to a command.</summary>
    public void AddTo(Command command)
    {
        foreach (var option in (Option[])[Vehicle, At, As, Skip, Articles])
            command.Options.Add(option);
    }

    /// <summary>True when one was given that has a meaning only with a list.</summary>
    public bool AreAsked(ParseResult parsed) =>
        parsed.GetValue(At) is { Length: > 0 } || parsed.GetValue(As) is { Length: > 0 } || parsed.GetValue(Skip) is { Length: > 0 }
        || parsed.GetValue(Articles) is not null;

    /// <summary>The files that are read besides the list.</summary>
    public IEnumerable<string> Files(ParseResult parsed) => parsed.GetValue(Articles) is { } file ? [file] : [];

    /// <summary>What was asked for; null when no vehicle was named.</summary>
    public QuoteRequest? Request(ParseResult parsed) => parsed.GetValue(Vehicle) is not { } vehicle ? null
        : new QuoteRequest(vehicle, new ImportOptions
        {
            At = parsed.GetValue(At) ?? [],
            As = parsed.GetValue(As) ?? [],
            Skip = parsed.GetValue(Skip) ?? [],
        }, parsed.GetValue(Articles));

    /// <summary>What is wrong with the options of a command whose builds may be lists; null when nothing is.</summary>
    public string? Wrong(ParseResult parsed) => AreAsked(parsed) && parsed.GetValue(Vehicle) is null
        ? "--at, --as, --skip and --articles are about a seller's list: they need --vehicle ID, such as `--vehicle tansy-hatch`" : null;
}
