using System.Text.Json;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Impacts;
using FitCheck.Reports.Format;
using FitCheck.Reports.Json;

namespace FitCheck.Reports.Impacts;

/// <summary>
/// For programs. The shape is published in reports/schema/impact.schema.json; a change that breaks a reader needs a new `format`.
/// </summary>
internal sealed class ImpactJson : IImpactReport
{
    /// <summary>The version of the shape.</summary>
    public const int Shape = 1;

    public string Format => "json";

    public void Write(ImpactResult result, ReportOptions options, TextWriter output) => JsonText.Write(json => Whole(json, result), output);

    private static void Whole(Utf8JsonWriter json, ImpactResult result)
    {
        json.WriteStartObject();
        json.WriteNumber("format", Shape);
        json.WriteString("program", result.Program);
        json.WriteString("from", result.From);
        json.WriteString("to", result.To);
        json.WriteBoolean("worse", result.Refused.Any());
        Each(json, "builds", result.Builds, Build);
        json.WriteNumber("pairs_compared", result.PairsCompared);
        Each(json, "pairs", result.Pairs, Pair);
        Each(json, "rules", result.Rules, Rule);
        Each(json, "entries", result.Entries, Entry);
        json.WriteEndObject();
    }

    private static void Build(Utf8JsonWriter json, BuildChange build)
    {
        json.WriteString("id", build.Id);
        if (build.RenamedFrom is { } old)
            json.WriteString("renamed_from", old);
        json.WriteString("name", build.Name);
        json.WriteString("fate", build.Fate.ToString().ToLowerInvariant());
        json.WriteString("before", build.Before?.Word());
        json.WriteString("after", build.After?.Word());
        json.WriteBoolean("accepted", build.Accepted);
        Place(json, build.At);
        Each(json, "problems", build.Problems, (j, problem) =>
        {
            j.WriteString("message", problem.Message);
            Place(j, problem.At);
        });
        Each(json, "findings", build.Findings, (j, change) =>
        {
            j.WriteString("rule", change.Finding.Rule);
            j.WriteString("position", change.Finding.Position);
            j.WriteString("before", change.Before?.Word());
            j.WriteString("after", change.After?.Word());
            j.WriteString("message", change.Finding.Message);
            Each(j, "because", change.Causes, (k, cause) =>
            {
                k.WriteString("what", cause.What);
                Place(k, cause.At);
            });
        });
    }

    private static void Pair(Utf8JsonWriter json, PairChange pair)
    {
        json.WriteString("vehicle", pair.Vehicle);
        json.WriteString("position", pair.Position);
        json.WriteString("driver", pair.Driver);
        json.WriteString("before", pair.Before.Word());
        json.WriteString("after", pair.After.Word());
        json.WriteString("mount_before", pair.MountBefore);
        json.WriteString("mount_after", pair.MountAfter);
        json.WriteString("reason", pair.Reason);
    }

    private static void Rule(Utf8JsonWriter json, RuleEdit rule)
    {
        json.WriteString("rule", rule.Rule);
        json.WriteString("change", ImpactWords.Word(rule.Change));
        json.WriteString("what", rule.What);
        Place(json, rule.At);
    }

    private static void Entry(Utf8JsonWriter json, EntryChange entry)
    {
        json.WriteString("kind", entry.Kind);
        json.WriteString("id", entry.Id);
        json.WriteString("change", ImpactWords.Word(entry.Change));
        Place(json, entry.At);
        Each(json, "keys", entry.Keys, (j, key) =>
        {
            j.WriteString("path", key.Path);
            j.WriteString("before", key.Before);
            j.WriteString("after", key.After);
            Place(j, key.At);
        });
    }

    private static void Place(Utf8JsonWriter json, Location at)
    {
        json.WriteStartObject("at");
        json.WriteString("file", at.File);
        json.WriteNumber("line", at.Line);
        json.WriteNumber("column", at.Column);
        json.WriteEndObject();
    }

    private static void Each<T>(Utf8JsonWriter json, string name, IEnumerable<T> items, Action<Utf8JsonWriter, T> write)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            write(json, item);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }
}
