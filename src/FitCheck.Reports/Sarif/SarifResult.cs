using System.Text.Json;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;

namespace FitCheck.Reports.Sarif;

/// <summary>One result of a log, in SARIF's terms.</summary>
internal sealed record SarifResult(string Rule, string Level, string Message, Location At)
{
    public IReadOnlyList<Related> Related { get; init; } = [];
    public required string Fingerprint { get; init; }
    /// <summary>The name of what it is about, for a person.</summary>
    public string? Subject { get; init; }
    /// <summary>Why it is accepted; null when it isn't.</summary>
    public string? Accepted { get; init; }
    /// <summary>Writes what SARIF has no word for; null for nothing.</summary>
    public Action<Utf8JsonWriter>? Properties { get; init; }
}

/// <summary>One rule of a log: what to show beside its results.</summary>
internal sealed record SarifRule(RuleHelp Help)
{
    public string Level => Help.CanFail ? "error" : "warning";

    /// <summary>The plain help; the same words as in the rule's file.</summary>
    public string Text =>
        string.Join("\n\n",
            new[] { Help.Why, Help.Advice, Help.CanBeWaived ? "" : "No build may waive it.", Source }.Where(t => t.Length > 0));

    private string Source => Help.Source is null ? "" : $"Source: {Help.Source}{(Help.Url is null ? "" : $", {Help.Url}")}";
}
