using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;

namespace FitCheck.Tests.Mistakes;

/// <summary>Runs rows: checks the edited build, or lints the edited entry, and says what was told otherwise than the row expects.</summary>
internal sealed class MistakeTrial
{
    private static readonly string Catalog = RepositoryRoot.Of("catalog");
    private static readonly string Rules = RepositoryRoot.Of("rules");
    private static readonly Lazy<Checker> Plain = new(() => Opened([Catalog]));
    private static readonly Lazy<IReadOnlyDictionary<string, BuildResult>> Untouched = new(
        () => Directory.GetFiles(Path.Combine(Catalog, "builds"), "*.yaml").ToDictionary(
            f => Path.GetFileNameWithoutExtension(f),
            f => Plain.Value.Check([BuildSource.File(f)]).Result!.Builds[0], StringComparer.Ordinal));

    /// <summary>What is wrong with the row's expectation, or with the program; null where they agree.</summary>
    public static string? Miss(MistakeRow row)
    {
        using var overlay = new TemporaryFolder();
        try
        {
            var told = row.Entry is null ? Check(row, overlay) : LintEntry(row, overlay);
            return row.Tells is { } tells ? Refused(told, tells) : row.Says is { } says ? Mistaken(row, says, told) : Sound(row, told);
        }
        catch (InvalidDataException e)
        {
            return e.Message;
        }
    }

    private static Told Check(MistakeRow row, TemporaryFolder overlay)
    {
        var file = Path.Combine(Catalog, "builds", row.Build + ".yaml");
        if (!File.Exists(file))
            throw new InvalidDataException($"there is no build `{row.Build}`");
        var text = EditedYaml.Of(file, row.Edits.Where(e => e.In is null));
        foreach (var entry in row.Edits.Where(e => e.In is not null).GroupBy(e => e.In!, StringComparer.Ordinal))
            Lay(overlay, entry.Key, entry);
        if (Directory.GetDirectories(overlay.Path).Length == 0)
            return Told.Of(Plain.Value.Check([BuildSource.Text("build.yaml", text)]));
        var opened = Checker.Open(new CheckerOptions { Catalogs = [Catalog, overlay.Path], Rules = [Rules] });
        return opened.Checker?.Check([BuildSource.Text("build.yaml", text)]) is { } outcome ? Told.Of(outcome)
            : new Told([], opened.Problems);
    }

    private static Told LintEntry(MistakeRow row, TemporaryFolder overlay)
    {
        foreach (var entry in row.Edits.GroupBy(e => e.In ?? row.Entry!, StringComparer.Ordinal))
            Lay(overlay, entry.Key, entry);
        var here = overlay.Path.Replace('\\', '/') + "/";
        var told = Lint.Run([], new Folders([Catalog, overlay.Path], [Rules]), ValidationCache.Nothing).Problems
            .Where(p => p.At.File.StartsWith(here, StringComparison.Ordinal)).ToList();
        return new Told([.. told.Where(p => p.Rule is not null).Select(p => new Word(p.Rule!, null, Of(p.Severity)))],
            [.. told.Where(p => p.Rule is null)]);
    }

    private static Status Of(Severity severity) => severity == Severity.Error ? Status.Fail : Status.Warn;

    private static void Lay(TemporaryFolder overlay, string entry, IEnumerable<Edit> edits)
    {
        var file = Path.Combine(Catalog, entry.Replace('/', Path.DirectorySeparatorChar) + ".yaml");
        if (!File.Exists(file))
            throw new InvalidDataException($"there is no entry `{entry}`");
        overlay.Write(entry + ".yaml", EditedYaml.Of(file, edits));
    }

    private static string? Refused(Told told, string tells) =>
        told.Problems.Any(p => p.Severity == Severity.Error && p.Message.Contains(tells, StringComparison.OrdinalIgnoreCase)) ? null
            : $"is not refused with \"{tells}\", but {told}";

    private static string? Mistaken(MistakeRow row, Status says, Told told)
    {
        var before = row.Rule is null ? Before(row) : [];
        var there = told.Words.Where(w => row.At is null || w.At is null || w.At == row.At);
        var isTold = there.Any(w => row.Rule is null ? w.Status >= says && w.Status > before.GetValueOrDefault((w.Rule, w.At))
            : w.Rule == row.Rule && w.Status == says);
        return isTold ? null : $"{says.Word()} {row.Rule}{(row.At is null ? "" : $" at {row.At}")} is not told, but {told}";
    }

    // What is said of the untouched build.
    private static Dictionary<(string Rule, string? At), Status> Before(MistakeRow row) => row.Build is null ? []
        : Untouched.Value[row.Build].Findings.GroupBy(f => (f.Rule, (string?)f.Position))
        .ToDictionary(g => g.Key, g => g.Max(f => f.Status));

    private static string? Sound(MistakeRow row, Told told)
    {
        var before = Before(row).GroupBy(f => f.Key.Rule, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Max(f => f.Value), StringComparer.Ordinal);
        var worse = told.Words.Where(w => w.Status > (row.Sound.Contains(w.Rule, StringComparer.Ordinal) ? Status.Pass
            : before.GetValueOrDefault(w.Rule, Status.Pass))).ToList();
        return worse.Count == 0 && told.Problems.Count == 0 ? null : $"is sound, but {new Told(worse, told.Problems)}";
    }

    private static Checker Opened(IReadOnlyList<string> catalogs) =>
        Checker.Open(new CheckerOptions { Catalogs = catalogs, Rules = [Rules] }).Checker
            ?? throw new InvalidDataException("the catalog can't be opened");

    // What one rule says at one place.
    private sealed record Word(string Rule, string? At, Status Status);

    private sealed record Told(IReadOnlyList<Word> Words, IReadOnlyList<Problem> Problems)
    {
        public static Told Of(CheckOutcome outcome) => new(
            [.. outcome.Result?.Builds[0].Findings.Where(f => f.Waived is null).Select(f => new Word(f.Rule, f.Position, f.Status)) ?? []],
            outcome.Problems);

        public override string ToString()
        {
            var words = Words.Where(w => w.Status != Status.Pass).OrderByDescending(w => w.Status)
                .Select(w => $"{w.Status.Word()} {w.Rule} {w.At}".TrimEnd()).Distinct(StringComparer.Ordinal)
                .Concat(Problems.Select(p => p.ToString())).ToList();
            return words.Count == 0 ? "nothing is told" : string.Join("; ", words);
        }
    }
}
