using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Yaml;

namespace FitCheck.Impacts;

/// <summary>Compares what is found of each build on two sides, and says which changes it comes from.</summary>
internal sealed class BuildDifferences(InputState from, InputState to, IReadOnlyList<EntryChange> entries, IReadOnlyList<RuleEdit> rules)
{
    private const int MostCauses = 6;

    private readonly Dictionary<string, EntryChange> _byFile = entries.GroupBy(e => e.At.File, StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
    private readonly Dictionary<string, EntryChange> _byId = entries.GroupBy(e => e.Id, StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);

    public IReadOnlyList<BuildChange> All(IReadOnlyCollection<string> accepted)
    {
        var changes = new List<BuildChange>();
        foreach (var (was, now) in BuildPairs.Of(Texts(from), Texts(to)))
            changes.Add(One(was, now) with
            {
                Accepted = accepted.Contains("all") || (was is not null && accepted.Contains(was))
                    || (now is not null && accepted.Contains(now)),
            });
        return [.. changes.OrderBy(c => Rank(c.Fate)).ThenBy(c => c.Id, StringComparer.Ordinal)];
    }

    private static Dictionary<string, string> Texts(InputState side) =>
        side.Builds.ToDictionary(b => b.Key, b => b.Value.Text, StringComparer.Ordinal);

    private static int Rank(BuildFate fate) => fate switch
    {
        BuildFate.Unreadable => 0,
        BuildFate.Worse => 1,
        BuildFate.Gone => 2,
        BuildFate.New => 3,
        BuildFate.Better => 4,
        _ => 5,
    };

    private BuildChange One(string? earlier, string? later)
    {
        var (wasThere, isThere) = (earlier is not null, later is not null);
        var (was, now) = (wasThere ? from.Builds[earlier!] : default, isThere ? to.Builds[later!] : default);
        var id = later ?? earlier!;
        var change = new BuildChange
        {
            Id = id,
            RenamedFrom = wasThere && isThere && earlier != later ? earlier : null,
            Name = now.Result?.Name ?? was.Result?.Name ?? id,
            At = isThere ? now.At : was.At,
            Fate = BuildFate.Same,
            Before = was.Result?.Verdict,
            After = now.Result?.Verdict,
            Waivers = now.Result?.WaiversRestedOn ?? 0,
            Problems = isThere && now.Result is null ? now.Problems : [],
        };
        if (!isThere)
            return change with { Fate = BuildFate.Gone };
        if (now.Result is null)
            return change
                with
            { Fate = wasThere && was.Result is not null ? BuildFate.Unreadable : wasThere ? BuildFate.Same : BuildFate.New };
        if (was.Result is null)
            return change with { Fate = wasThere ? BuildFate.Better : BuildFate.New };
        var findings = Findings(earlier!, later!, was.Result, now.Result);
        return change with { Findings = findings, Fate = Fate(was.Result.Verdict, now.Result.Verdict, findings) };
    }

    // The verdict decides; where it stays, a single finding that gets worse makes the build worse.
    private static BuildFate Fate(Status before, Status after, IReadOnlyList<FindingChange> findings) =>
        after > before ? BuildFate.Worse
        : after < before ? BuildFate.Better
        : findings.Any(f => f.IsWorse) ? BuildFate.Worse
        : findings.Any(f => f.IsBetter) ? BuildFate.Better
        : BuildFate.Same;

    private List<FindingChange> Findings(string earlier, string later, BuildResult was, BuildResult now)
    {
        var before = ByKey(was);
        var after = ByKey(now);
        var changes = new List<FindingChange>();
        foreach (var key in before.Keys.Union(after.Keys))
        {
            var (old, current) = (before.GetValueOrDefault(key), after.GetValueOrDefault(key));
            var change = new FindingChange((current ?? old)!, Counted(old), Counted(current), []);
            if (change.IsWorse || change.IsBetter)
                changes.Add(change with { Causes = Causes(earlier, later, old, current) });
        }
        return [.. changes.OrderByDescending(c => c.IsWorse).ThenByDescending(c => c.After ?? Status.Pass)
            .ThenBy(c => c.Finding.Rule, StringComparer.Ordinal).ThenBy(c => c.Finding.Position, StringComparer.Ordinal)];
    }

    private static Status? Counted(Finding? finding) => finding is null ? null : finding.Waived is null ? finding.Status : Status.Pass;

    private static Dictionary<(string, string), Finding> ByKey(BuildResult result)
    {
        var findings = new Dictionary<(string, string), Finding>();
        foreach (var finding in result.Findings)
            findings.TryAdd((finding.Rule, finding.Position), finding);
        return findings;
    }

    // Nearest: a changed value on a line that the finding rests on; then the rule; then other values of the parts concerned; then the build
    // itself.
    private List<Cause> Causes(string earlier, string later, Finding? old, Finding? current)
    {
        var finding = (current ?? old)!;
        var lines = new HashSet<(string, int)>();
        var files = new HashSet<string>(StringComparer.Ordinal);
        foreach (var related in Places(old, from).Concat(Places(current, to)))
        {
            lines.Add((related.File, related.Line));
            files.Add(related.File);
        }
        var touched = files.Select(f => _byFile.GetValueOrDefault(f)).Concat(finding.Parts.Select(p => _byId.GetValueOrDefault(p)))
            .OfType<EntryChange>().Distinct().ToList();
        var causes = new List<Cause>();
        causes.AddRange(
            touched.SelectMany(e => e.Keys.Where(k => lines.Contains((k.At.File, k.At.Line)))).Select(k => new Cause(k.At, k.ToString())));
        causes.AddRange(rules.Where(r => r.Rule == finding.Rule).Select(r => new Cause(r.At, $"the rule {Said(r)}")));
        if (causes.Count == 0)
            causes.AddRange(
                touched.SelectMany(
                    e => e.Keys.Select(k => new Cause(k.At, k.ToString()))
                        .DefaultIfEmpty(new Cause(e.At, $"{e.Kind} {e.Id} is {(e.Change == Change.Added ? "new" : "gone")}"))));
        if (causes.Count == 0 && BuildKeys(earlier, later) is { Count: > 0 } keys)
            causes.AddRange(keys.Select(k => new Cause(k.At, $"the build itself: {k}")));
        if (causes.Count == 0)
            causes.AddRange(entries.SelectMany(e => e.Keys.Select(k => new Cause(k.At, $"{e.Id}: {k}"))));
        return [.. causes.Distinct().Take(MostCauses)];
    }

    private static string Said(RuleEdit rule) =>
        rule.Change switch { Change.Added => "is new", Change.Removed => "is gone", _ => rule.What };

    private static IEnumerable<Location> Places(Finding? finding, InputState side) =>
        (finding?.Related ?? []).Select(r => side.Shown(r.At));

    private IReadOnlyList<KeyChange> BuildKeys(string earlier, string later) =>
        Written(from, earlier) is { } was && Written(to, later) is { } now ? KeyDifferences.Of(was, now, from.Shown, to.Shown) : [];

    private static YamlNode? Written(InputState side, string build) =>
        side.Builds[build].Result is { } result && InputFile.Bytes(result.File, result.File, new ProblemList()) is { } bytes
            && SourceText.Decode(result.File, bytes, new ProblemList()) is { } source ? YamlReader.Read(source, new ProblemList()) : null;
}
