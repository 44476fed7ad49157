using System.Text.Json;
using FitCheck.Facts;
using FitCheck.Facts.Values;
using Xunit;

namespace FitCheck.Tests.Facts;

/// <summary>What facts declare that they read, against what they read while every reference build is worked out.</summary>
public sealed class InputTests
{
    private static readonly Lazy<HashSet<ReadKey>> Read = new(() =>
    {
        var keys = new ReadKeys(most: 1);
        return [.. Directory.GetFiles(RepositoryRoot.Of("catalog", "builds"), "*.yaml").Order(StringComparer.Ordinal).SelectMany(keys.Of)];
    });

    [Fact]
    public void Whatever_a_fact_reads_in_a_reference_build_is_declared()
    {
        Assert.True(Read.Value.Count > 1_000, $"only {Read.Value.Count} keys were seen to be read");
        Told(Read.Value.Where(r => !r.Fact.Inputs.Any(i => i.Covers(r.Kind, r.Key)))
            .Select(r => $"{r.Fact.Subject} {r.Fact.Name} reads {r.Kind}.{r.Key}").Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_key_that_is_declared_stands_in_a_schema()
    {
        var offenders =
            from fact in FactRegistry.Declarations
            from key in fact.Inputs.SelectMany(i => i.Keys).Distinct(StringComparer.Ordinal)
            where key != Source.Everything && !IsInSchema(key.Split('.'))
            select $"{fact.Name}: {key}";

        Assert.Equal("", string.Join('\n', offenders.Distinct(StringComparer.Ordinal)));
    }

    [Fact]
    public void A_key_that_an_entry_may_have_moves_a_fact_or_is_listed_with_its_reason()
    {
        var read = Read.Value.Select(r => $"{r.Kind}.{r.Key}").ToHashSet(StringComparer.Ordinal);
        var unused = UnusedKeys.All().Where(k => !read.Any(r => UnusedKeys.IsUnder(r, k) || UnusedKeys.IsUnder(k, r))).ToList();

        Told(unused.Where(k => UnusedKeys.Reason(k) is null));
    }

    [Fact]
    public void A_key_that_a_build_may_have_moves_a_fact_or_is_listed_with_its_reason()
    {
        var keys = new ReadKeys(most: 1);
        var moving = Directory.GetFiles(RepositoryRoot.Of("catalog", "builds"), "*.yaml").SelectMany(keys.MovingIn)
            .Select(k => $"build.{k}").ToHashSet(StringComparer.Ordinal);
        var unused = UnusedKeys.OfBuilds()
            .Where(k => !moving.Any(r => UnusedKeys.IsUnder(r, k) || UnusedKeys.IsUnder(k, r))).ToList();

        Told(unused.Where(k => UnusedKeys.Reason(k) is null));
    }

    [Fact]
    public void What_is_listed_as_unused_is_a_key()
    {
        var all = UnusedKeys.All().Concat(UnusedKeys.OfBuilds()).ToList();

        Told(UnusedKeys.Listed.Where(l => !all.Exists(k => UnusedKeys.IsUnder(k, l) || UnusedKeys.EndsIn(k, l))));
    }

    private static void Told(IEnumerable<string> offenders)
    {
        var all = offenders.ToList();
        Assert.True(all.Count == 0, string.Join('\n', all));
    }

    [Fact]
    public void Every_fact_declares_what_it_reads() =>
        Assert.Empty(FactRegistry.Declarations.Where(f => f.Inputs.Count == 0).Select(f => f.Name));

    // A position stands within a vehicle; what a schema refers to is looked for by name in all of them.
    private static bool IsInSchema(string[] key) =>
        key[1..].All(word => Known(key[0] == "position" ? "vehicle" : key[0]).Contains(word)) && key[0].Length > 0;

    private static HashSet<string> Known(string kind) => [.. Properties(kind), .. Properties("common")];

    private static IEnumerable<string> Properties(string kind)
    {
        using var schema = JsonDocument.Parse(File.ReadAllText(RepositoryRoot.Of("catalog", "schema", kind + ".schema.json")));
        return In(schema.RootElement).ToList();

        static IEnumerable<string> In(JsonElement element) => element.ValueKind switch
        {
            JsonValueKind.Object => element.EnumerateObject().SelectMany(p =>
                p is { Name: "properties", Value.ValueKind: JsonValueKind.Object }
                    ? p.Value.EnumerateObject().SelectMany(q => In(q.Value).Append(q.Name)) : In(p.Value)),
            JsonValueKind.Array => element.EnumerateArray().SelectMany(In),
            _ => [],
        };
    }
}
