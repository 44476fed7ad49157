using System.CommandLine;
using System.CommandLine.Parsing;
using FitCheck.Foundation.Problems;

namespace FitCheck.Cli;

/// <summary>
/// Finds words of a command line that can't be meant: one with nothing in it, as a variable of the shell leaves it that nobody set, and an
/// option that the command doesn't have, which would pass for the name of a file.
/// </summary>
internal static class WrongWords
{
    /// <summary>What is wrong where a command is meant that there is not, or none is named; null where there is one.</summary>
    public static string? Command(ParseResult parsed)
    {
        var within = parsed.CommandResult.Command;
        var commands = within.Subcommands.Select(c => c.Name).ToList();
        if (commands.Count == 0 || parsed.Errors.Count == 0)
            return null;
        return parsed.UnmatchedTokens is [var word, ..] && word.Length > 0 && word[0] != '-'
            ? $"there is no command `{word}`{(Nearest.Hint(word, commands) is { Length: > 0 } hint ? hint : $"; there are "
                + $"{Listed(commands)}")}"
            : parsed.UnmatchedTokens.Count == 0 && parsed.Tokens.Count > 0 ? $"`{within.Name}` needs one of {Listed(commands)}" : null;
    }

    private static string Listed(List<string> words) => $"{string.Join(", ", words[..^1])} and {words[^1]}";

    /// <summary>A sentence for each.</summary>
    public static IReadOnlyList<string> In(ParseResult parsed)
    {
        // What follows `--` is a name, whatever it looks like.
        var before = parsed.Tokens.TakeWhile(t => t.Type != TokenType.DoubleDash).Select(t => t.Value).ToHashSet(StringComparer.Ordinal);
        var known = parsed.CommandResult.Command.Options.SelectMany(o => o.Aliases.Prepend(o.Name)).ToList();
        return [.. parsed.CommandResult.Children.SelectMany(
            c => Empty(c).Concat(c is ArgumentResult ? Unknown(c.Tokens, before, known) : [])).Distinct(StringComparer.Ordinal)];
    }

    private static IEnumerable<string> Empty(SymbolResult symbol)
    {
        if (symbol.Tokens.Any(t => t.Value.Length == 0))
            yield return symbol switch
            {
                OptionResult { Option: var option } => $"{option.Name} was given an empty {option.HelpName ?? "word"}",
                ArgumentResult { Argument: var argument } => $"an empty {argument.HelpName ?? argument.Name} was given",
                _ => "an empty word was given",
            } + "; is a variable of the shell not set?";
    }

    private static IEnumerable<string> Unknown(IEnumerable<Token> words, HashSet<string> before, List<string> known) =>
        words.Select(w => w.Value).Where(w => w.Length > 1 && w[0] == '-' && before.Contains(w))
            .Select(w => w.Split('=', ':')[0]).Select(w => $"unknown option `{w}`{Nearest.Hint(w, known)}");
}
