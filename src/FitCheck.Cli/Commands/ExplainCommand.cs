using System.CommandLine;
using FitCheck.Cli.Output;
using FitCheck.Evaluation;
using FitCheck.Facts;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Rules.Model;

namespace FitCheck.Cli.Commands;

/// <summary>`fitcheck explain RULE`</summary>
internal static class ExplainCommand
{
    public static Command Create()
    {
        var rule = new Argument<string?>("RULE")
        {
            HelpName = "RULE",
            Description = "A rule's id, such as mount/too-deep; without one, all are listed",
            Arity = ArgumentArity.ZeroOrOne
        };
        var common = new CommonOptions();
        rule.CompletionSources.Add(_ => RuleSet.Load(Folders.BesideProgram.Rules, FactRegistry.Declarations, new ProblemList())
            .Rules.Select(r => new System.CommandLine.Completions.CompletionItem(r.Id)));
        var command = new Command("explain", "Say what a rule asks, its thresholds, its source, and how to satisfy it") { rule,
            common.Rules };
        command.SetAction(parsed =>
        {
            var problems = new ProblemList();
            var rules = RuleSet.Load(common.Folders(parsed).Rules, FactRegistry.Declarations, problems);
            if (problems.HasErrors)
                return ProblemLines.Tell(problems.Sorted(), Console.Error);
            if (parsed.GetValue(rule) is not { } id)
            {
                var width = rules.Rules.Max(r => r.Id.Length);
                foreach (var one in rules.Rules)
                    Console.Out.WriteLine($"{one.Id.PadRight(width)}  {one.Title}");
                return ExitStatus.Good;
            }
            if (rules.Find(id) is { } found)
            {
                Console.Out.Write(Explain.Text(found, FactRegistry.Declarations, rules.Changes.FirstOrDefault(c => c.Rule == id)));
                return ExitStatus.Good;
            }
            if (rules.Changes.FirstOrDefault(c => c.Rule == id) is { } off)
            {
                Console.Out.WriteLine($"{off.Rule}\n{off.Title}\n\n{off.What} in {off.At}. Reason: {off.Reason}");
                return ExitStatus.Good;
            }
            Console.Error.WriteLine(
                $"fitcheck: no rule `{id}`{(Nearest.Hint(id, rules.Rules.Select(r => r.Id)) is { Length: > 0 } hint ? hint : ".")} "
                    + $"`fitcheck explain` lists them all.");
            return ExitStatus.BadInput;
        });
        return command;
    }
}
