using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Rules.Conditions;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Messages;
using FitCheck.Yaml;

namespace FitCheck.Rules.Model;

/// <summary>One rule file: which fact it judges, what is acceptable, why, and what to do when it is not.</summary>
internal sealed record Rule
{
    // A search asks for them of every finding. Whoever copies a rule leaves its expressions as they are.
    private IReadOnlyList<string>? _names;

    /// <summary>`family/slug`, which is also its path under the rules directory.</summary>
    public required string Id { get; init; }
    /// <summary>Where the file begins.</summary>
    public required Location At { get; init; }
    public required string Title { get; init; }
    public required Subject Subject { get; init; }
    /// <summary>Words of <see cref="AboutWords"/>; the first that the build chose is where a finding points.</summary>
    public IReadOnlyList<string> About { get; init; } = [];
    /// <summary>When it applies; null for always.</summary>
    public Expression? When { get; init; }
    public required Expression Fact { get; init; }
    /// <summary>Of value, limit and margin; null for truths and words.</summary>
    public Unit? Unit { get; init; }
    /// <summary>Null when the rule never warns.</summary>
    public Threshold? Warn { get; init; }
    /// <summary>Null when the rule never fails.</summary>
    public Threshold? Fail { get; init; }
    /// <summary>One for each status that the rule can give.</summary>
    public required RuleMessages Messages { get; init; }
    public required string Advice { get; init; }
    public required string Why { get; init; }
    public required RuleSource Source { get; init; }
    /// <summary>What a report tells once, in its cautions, when the rule applied.</summary>
    public string? Caution { get; init; }
    /// <summary>What sort of part would cure it; null where buying something is not the cure.</summary>
    public AskedPart? AsksFor { get; init; }
    public required IReadOnlyList<RuleExample> Examples { get; init; }
    /// <summary>The facts that it may name.</summary>
    public required FactScope Scope { get; init; }
    /// <summary>
    /// False for a rule of destruction, fire or airbags: a build that waives it is refused, and so is a later directory that loosens it.
    /// </summary>
    public bool CanBeWaived { get; init; } = true;
    /// <summary>True when a later directory changed its limits or words.</summary>
    public bool IsChanged { get; init; }
    /// <summary>The file's keys and values as they are written.</summary>
    public required YamlMap Written { get; init; }

    /// <summary>The statuses that it can give, best first.</summary>
    public IEnumerable<Status> Statuses => Possible(Warn is not null, Fail is not null);

    /// <summary>The facts that it names, each once.</summary>
    public IReadOnlyList<string> Names =>
        _names ??= [.. Expressions.SelectMany(e => e.Names).Distinct(StringComparer.Ordinal)];

    /// <summary>Where the value of this key stands, or where the file begins when it has none.</summary>
    public Location PlaceOf(string key) => Written[key]?.At ?? At;

    /// <summary>What a report tells of it.</summary>
    public RuleHelp Help =>
        new(Id, Title, Why, Advice, Source.Title, Source.Url, Fail is not null) { TellsOfWork = TellsOfWork, CanBeWaived = CanBeWaived };

    /// <summary>True when it never fails and speaks only where the build accepts a kind of work.</summary>
    public bool TellsOfWork => Fail is null && When?.Names.Any(n => n.EndsWith("_accepted", StringComparison.Ordinal)) == true;

    internal static IEnumerable<Status> Possible(bool warn, bool fail)
    {
        yield return Status.Pass;
        if (warn)
            yield return Status.Warn;
        yield return Status.Measure;
        if (fail)
            yield return Status.Fail;
    }

    private IEnumerable<Expression> Expressions =>
        [.. When is null ? [] : (Expression[])[When], Fact, .. Warn?.Bounds ?? [], .. Fail?.Bounds ?? []];
}

/// <summary>Where a rule's figure comes from.</summary>
internal sealed record RuleSource(string Title, string? Url = null)
{
    public override string ToString() => Url is null ? Title : $"{Title}, {Url}";
}
