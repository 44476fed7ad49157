using FitCheck.Facts.Values;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Rules.Conditions;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Files;
using FitCheck.Rules.Model;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.Rules;

/// <summary>A few facts that the tests of rules declare and give.</summary>
internal static class RuleTestFacts
{
    public static readonly IReadOnlyList<Fact> Declared =
    [
        new NumberFact(Subject.Position, "depth_margin", Dimension.Metre, "Depth left behind the driver.", []),
        new NumberFact(Subject.Position, "depth_needed", Dimension.Metre, "Depth that the driver needs behind the panel.", []),
        new NumberFact(Subject.Position, "depth_available", Dimension.Metre, "Depth behind the panel.", []),
        new NumberFact(Subject.Position, "load", Dimension.Ohm, "Rated impedance of the driver.", []),
        new NumberFact(Subject.Position, "ratio", Dimension.One, "Power available over rated noise power.", []),
        new NumberFact(Subject.Position, "cost", Dimension.Currency, "Price of the driver.", []),
        new TruthFact(Subject.Position, "has_driver", "Whether the build puts a driver here.", []),
        new TruthFact(Subject.Position, "in_cup", "Whether the driver sits in a cup.", []),
        new WordFact(Subject.Position, "connection", "How the driver is connected.", []),
        new NumberFact(Subject.Channel, "corner", Dimension.Hertz, "Corner of the high-pass.", []),
    ];

    public static readonly FactScope Scope = new(Subject.Position, Declared);

    public static readonly Unsure Guess = new("depth behind the panel", "With a wire.", Estimated: true);
    public static readonly Unsure Gap = new("depth of the driver", "On its sheet.", Estimated: false);

    public static FactValue Mm(double value) => FactValue.Of(Dimension.Metre, value * 1e-3);

    public static FactValue Mm(double low, double value, double high) =>
        FactValue.Of(Dimension.Metre, new Uncertain(value * 1e-3, low * 1e-3, high * 1e-3, (high - low) * 0.5e-3));

    public static FactValue Guessed(this FactValue value) => value with { Unsure = [Guess] };

    public static FactValue UnknownDepth() => FactValue.Unknown(FactType.Number(Dimension.Metre), Gap);

    /// <summary>The expression, or null with the problems of it; it stands unquoted in line 7, column 11.</summary>
    public static Expression? Read(string text, out IReadOnlyList<Problem> problems, bool quoted = false)
    {
        var list = new ProblemList();
        var expression = Expression.Read(new YamlScalar(new Location("r.yaml", 7, 11), text, quoted), Scope, list);
        problems = list.Sorted();
        return expression;
    }

    public static FactValue Evaluate(string text, params (string Name, FactValue Value)[] facts)
    {
        var expression = Read(text, out var problems);
        Assert.Empty(problems);
        return expression!.Evaluate(Inputs(facts));
    }

    public static FactInputs Inputs(params (string Name, FactValue Value)[] facts) => new(Scope, Values(facts));

    public static Dictionary<string, FactValue> Values(params (string Name, FactValue Value)[] facts) =>
        facts.ToDictionary(f => f.Name, f => f.Value, StringComparer.Ordinal);

    public static FactTable Table(params (string Name, FactValue Value)[] facts) =>
        new(Subject.Position, "front-left", "Left front door", Values(facts)) { At = new Location("b.yaml", 9, 3), Currency = "EUR" };

    /// <summary>The rule that this text describes; it must have no problem.</summary>
    public static Rule Rule(string yaml)
    {
        var rule = TryRule(yaml, out var problems);
        Assert.Empty(problems);
        return rule!;
    }

    public static Rule? TryRule(string yaml, out IReadOnlyList<Problem> problems)
    {
        var list = new ProblemList();
        var root = YamlReader.Read(new SourceText("rules/mount/too-deep.yaml", yaml), list);
        var rule = root is null ? null : RuleReader.Read(root, Declared, list);
        problems = list.Sorted();
        return rule;
    }
}
