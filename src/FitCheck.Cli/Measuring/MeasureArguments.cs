using System.CommandLine;
using FitCheck.Cli.Commands;

namespace FitCheck.Cli.Measuring;

/// <summary>The build, or the vehicle, and the options that `fitcheck measure` takes.</summary>
internal sealed class MeasureArguments
{
    /// <summary>The word for a vehicle of which nothing is recorded yet.</summary>
    public const string New = "new";

    public Argument<string?> Build { get; } = new("BUILD")
    {
        HelpName = "BUILD",
        Description = "The build whose open readings are asked for",
        Arity = ArgumentArity.ZeroOrOne,
    };

    public Option<string?> Vehicle { get; } = new("--vehicle")
    {
        Description = "Instead of a build, all that an entry of a vehicle takes: `new` for one of which nothing is recorded yet",
        HelpName = "ID",
    };

    public Option<string?> Card { get; } = new("--card")
    {
        Description = "Write a card to print, an HTML page with fields for a pen, to this file",
        HelpName = "FILE",
    };

    public Option<string?> Write { get; } = new("--write", "-w")
    {
        Description = "Write the build with its readings to this file, not into BUILD; an existing file is kept",
        HelpName = "FILE",
    };

    public Option<bool> Force { get; } = new("--force") { Description = "Let --write replace an existing file" };

    public CommonOptions Common { get; } = new();

    /// <summary>What is wrong with the command line; null when nothing is.</summary>
    public string? Wrong(ParseResult parsed) => (parsed.GetValue(Build), parsed.GetValue(Vehicle)) switch
    {
        (null, null) => "name a build, or a vehicle with --vehicle",
        (not null, not null) => "name a build, or a vehicle with --vehicle, not both",
        (null, not null) when parsed.GetValue(Card) is null => "with --vehicle there is a card: name its file with --card",
        _ => null,
    };
}
