using System.CommandLine;
using System.Text.RegularExpressions;
using FitCheck.Cli;
using FitCheck.Cli.Commands;
using FitCheck.Evaluation;
using FitCheck.Facts;
using FitCheck.Foundation;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Rules.Model;
using Xunit;

namespace FitCheck.Tests.House;

/// <summary>Every sentence that a person reads, held to <see cref="PlainWords"/>.</summary>
public sealed partial class SentenceTests
{
    private static readonly RuleSet Rules = RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, new ProblemList());

    [Fact]
    public void Titles_of_rules_are_plain() =>
        None(Rules.Rules.SelectMany(r => Told(r.Id, r.Title, PlainWords.Of, PlainWords.OtherTerms,
            t => t.EndsWith('.') ? ["a title has no full stop"] : [], t => char.IsUpper(t[0]) ? [] : ["a title begins with a capital"])));

    [Fact]
    public void Sentences_of_rules_are_plain() =>
        None(from rule in Rules.Rules
             from text in rule.Messages.All.Select(m => Places().Replace(m.Text, "{}"))
                 .Concat([rule.Advice, rule.Why, rule.Caution ?? "None."])
             from fault in Told(rule.Id, text, PlainWords.OfSentences, PlainWords.OtherTerms)
             select fault);

    // A verb alone, or a clause that says where it holds.
    [Fact]
    public void Advice_says_what_to_do_next() =>
        None(Rules.Rules.Where(r => !Imperative().IsMatch(r.Advice)).Select(r => $"{r.Id}: {r.Advice}"));

    [Fact]
    public void Figures_of_practice_are_told_plainly() =>
        None(PracticeFigures().SelectMany(t => Told("practice", t, PlainWords.OfSentences, PlainWords.OtherTerms)));

    [Fact]
    public void What_facts_mean_is_told_plainly() =>
        None(FactRegistry.Declarations.SelectMany(f => Told(f.Name, f.Meaning, PlainWords.OfSentences, PlainWords.OtherTerms)));

    [Fact]
    public void Kinds_of_problems_are_told_plainly() =>
        None(ProblemKind.All.SelectMany(k => Told(k.Id, k.Title, PlainWords.Of)
            .Concat(new[] { k.Why, k.Advice }.SelectMany(t => Told(k.Id, t, PlainWords.OfSentences, PlainWords.OtherTerms)))));

    // Lines of the program's own help are columns, and a list of words ends as it likes.
    [Fact]
    public void Help_is_plain() =>
        None(Commands(Program.Root()).Where(c => c is not RootCommand).SelectMany(c =>
            c.Options.Select(o => ($"{c.Name} {o.Name}", o.Description)).Append((c.Name, c.Description))
                .Concat(c.Arguments.Select(a => ($"{c.Name} {a.Name}", a.Description))))
            .SelectMany(h => Told(h.Item1, h.Description ?? "", PlainWords.Of,
                IsListOfKinds(h.Description) ? _ => [] : PlainWords.OtherTerms)));

    // With the figures of real builds in them; names of parts are the catalog's own.
    [Fact]
    public void What_reference_builds_are_told_reads_well() =>
        None((from build in ReferenceBuilds()
              from finding in build.Findings
              from text in finding.ToMeasure.Select(m => m.How).Append(finding.Message)
              from fault in Told(finding.Rule, text, PlainWords.Of, PlainWords.TooExact,
                  t => finding.Rule.StartsWith("list/", StringComparison.Ordinal) || !Packed().IsMatch(t) ? [] : ["tells how it is packed"])
              select fault).Distinct());

    [Theory]
    [InlineData("The the spacer is thin.", "`The the`")]
    [InlineData("A amplifier hums.", "`A amplifier`")]
    [InlineData("It is an 80 W driver in a 8 ohm box, an used one.", "`a 8`", "`an used`")]
    [InlineData("Two  spaces , here.", "`  `", "` ,`")]
    [InlineData("No stop", "does not end with a full stop")]
    [InlineData("One. two.", "a sentence begins small: `two.`")]
    public void A_fault_is_seen(string text, params string[] faults) => Assert.Equal(faults, PlainWords.OfSentences(text));

    [Fact]
    public void Another_term_and_a_digit_too_many_are_seen()
    {
        Assert.Equal(["`loudspeaker`: say driver or speaker wire or speaker level or speaker output"],
            PlainWords.OtherTerms("Speaker wire goes to both loudspeakers, by a harness adapter; `adapter` is a key."));
        Assert.Equal(["`12.345 mm`"], PlainWords.TooExact("From 12.34 mm and 1016 mm to 12.345 mm, and 0.0012 V; 123456 is none."));
    }

    private static IEnumerable<string> Told(string where, string text, params Func<string, IEnumerable<string>>[] checks) =>
        checks.SelectMany(c => c(text)).Select(fault => $"{where}: {fault} in: {text}");

    // In full, so that the log has all there is to mend.
    private static void None(IEnumerable<string> faults)
    {
        var all = faults.ToList();
        Assert.True(all.Count == 0, $"{all.Count} faults\n{string.Join('\n', all)}");
    }

    // Kinds are words to type.
    private static bool IsListOfKinds(string? description) => description?.StartsWith("One of ", StringComparison.Ordinal) == true;

    private static IEnumerable<string> PracticeFigures() =>
        Whats().Matches(File.ReadAllText(RepositoryRoot.Of("rules", "practice.yaml"))).Select(m => m.Groups["what"].Value);

    private static IEnumerable<Command> Commands(Command command) =>
        command.Subcommands.SelectMany(Commands).Prepend(command).Where(c => !c.Hidden);

    private static IReadOnlyList<BuildResult> ReferenceBuilds()
    {
        var once = new Once(new Folders([RepositoryRoot.Of("catalog")], [RepositoryRoot.Of("rules")]), ValidationCache.Nothing);
        return once.Check([.. Directory.EnumerateFiles(RepositoryRoot.Of("catalog", "builds"), "*.yaml").Order(StringComparer.Ordinal)])
            .Result!.Builds;
    }

    [GeneratedRegex(@", (?:pair|pack of \d+) [a-z]")]
    private static partial Regex Packed();

    [GeneratedRegex(@"\{\{.*?\}\}")]
    private static partial Regex Places();

    [GeneratedRegex("^  what: \"(?<what>.*)\"$", RegexOptions.Multiline)]
    private static partial Regex Whats();

    [GeneratedRegex("^(?:Accept|Add|Ask|Break|Bridge|Check|Choose|Close|Correct|Count|Cross|Feed|File|Find|Fit|Follow|Give|Hold|Lay|Leave|"
        + "Let|Limit|Look|Mark|Measure|Mount|Move|Name|Order|Plan|Pull|Push|Put|Reckon|Rename|Run|Set|Swap|Take|Test|Turn|Unplug|Use|"
        + "Wire|Write)\\b")]
    private static partial Regex Imperative();
}
