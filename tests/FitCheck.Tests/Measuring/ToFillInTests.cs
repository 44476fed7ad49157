using System.Text.RegularExpressions;
using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Schemas;
using FitCheck.Tests.Facts;
using Xunit;
using Xunit.Abstractions;

namespace FitCheck.Tests.Measuring;

/// <summary>
/// Whatever a report asks to measure has a line to fill in under `readings` of the build, or says which key of which file lacks. A line
/// that is filled in is taken, and its question is not asked again.
/// </summary>
public partial class ToFillInTests(ITestOutputHelper output)
{
    private static readonly Checker Checker = FitCheck.Checker.Open(new CheckerOptions
    {
        Catalogs = [RepositoryRoot.Of("catalog")],
        Rules = [RepositoryRoot.Of("rules")],
    }).Checker!;

    // A number that is neither nothing nor absurd, in each unit.
    private static readonly Dictionary<string, string> Usual = new(StringComparer.Ordinal)
    {
        ["mm"] = "50",
        ["m"] = "3",
        ["deg"] = "5",
        ["degC"] = "105",
        ["mH"] = "0.3",
        ["cm2"] = "130",
        ["V"] = "12",
    };

    public static TheoryData<string> Builds() => ToldReadingTests.Builds();

    [Theory, MemberData(nameof(Builds))]
    public void A_line_that_is_filled_in_is_taken_and_its_question_is_gone(string name)
    {
        var text = File.ReadAllText(RepositoryRoot.Of("catalog", "builds", name + ".yaml"));
        var offenders = new List<string>();
        var filled = 0;
        foreach (var finding in Findings(text).Findings!)
        {
            foreach (var asked in finding.ToMeasure.Where(t => t.ToFillIn is not null))
            {
                filled++;
                var line = Filled(asked.ToFillIn!, asked.Passing);
                var (now, problems) = Findings($"{text}\nreadings:\n  - {line}\n");
                if (now is null)
                    offenders.Add($"{line} is not taken: {problems}");
                else if (now.Any(f => f.Rule == finding.Rule && f.Position == finding.Position
                    && f.ToMeasure.Any(t => t.What == asked.What)))
                    offenders.Add($"{finding.Rule} at {finding.Position} asks for {asked.What} again after {line}");
            }
        }
        output.WriteLine($"{name}: {filled} lines filled in");
        Assert.True(offenders.Count == 0, string.Join('\n', offenders.Distinct()));
    }

    [Theory, MemberData(nameof(Builds))]
    public void What_has_no_line_says_which_key_is_missing(string name)
    {
        var silent = new SortedSet<string>(StringComparer.Ordinal);
        var all = 0;
        foreach (var (what, asked) in new DroppedData(RepositoryRoot.Of("catalog", "builds", name + ".yaml")).Questions(oneOf: 23))
        {
            foreach (var item in asked)
            {
                all++;
                // A group of keys, such as `holes`, is written into the entry as a whole.
                if (item.Key is { } key && Reading.PathOf(key.Of, KeysOf(key)) is null
                    && !KeysOf(key).Any(k => k.StartsWith(key.Of + ".", StringComparison.Ordinal)))
                    silent.Add($"{item.What}: the schema has no {key.Kind} {key.Of}");
                // A fact of facts is not written anywhere: what it follows from is asked for by rules of its own.
                if (item.ToFillIn is null && !item.How.Contains('`', StringComparison.Ordinal)
                    && !item.How.Contains("It follows from", StringComparison.Ordinal))
                    silent.Add($"{item.What}: {item.How} (without {what})");
            }
        }
        output.WriteLine($"{name}: {all} questions");
        Assert.True(silent.Count == 0, string.Join('\n', silent));
    }

    private static IReadOnlyList<string> KeysOf(DatumKey key) => key.Kind switch
    {
        DatumKey.Position => SchemaKeys.Of("vehicle", "positions"),
        DatumKey.Line => SchemaKeys.Of("build", "fit"),
        DatumKey.Device => SchemaKeys.Of("build", "devices"),
        var kind => SchemaKeys.Of(kind),
    };

    [Fact]
    public void The_line_of_a_depth_is_that_of_the_readme()
    {
        var finding = Findings(File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "alder-missing-data.yaml"))).Findings!
            .First(f => f.Rule == "mount/too-deep" && f.Position == "front-door-left");

        Assert.Contains(finding.ToMeasure, t => t.ToFillIn == "{at: front-door-left, of: mounting.depth, value: ____ mm}");
    }

    [Fact]
    public void A_thing_is_called_by_its_name_and_words_stand_behind_the_line()
    {
        var lines = Findings(File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "alder-missing-data.yaml"))).Findings!
            .SelectMany(f => f.ToMeasure).Select(t => t.ToFillIn).Distinct().ToList();

        Assert.Contains("{at: front-door-left, of: obstructions.window glass.depth, value: ____ mm}", lines);
        Assert.Contains("{at: alder-mpv, of: factory_equalised, value: ____}  # true or false", lines);
    }

    private static string Filled(string line, string? passing)
    {
        var words = line.IndexOf("  # ", StringComparison.Ordinal) is > 0 and var at ? line[(at + 4)..] : null;
        var bare = words is null ? line : line[..^(words.Length + 4)];
        if (!bare.Contains("____", StringComparison.Ordinal))
            return bare;
        if (passing is not null && Value().Match(passing) is { Success: true } value && Blank().IsMatch(bare))
            return Blank().Replace(bare, value.Groups[1].Value, 1);
        var unit = Blank().Match(bare).Groups[1].Value.Trim();
        if (unit == "Hz @ ____ dB/octave")
            return Blank().Replace(bare, "3000 Hz @ 12 dB/octave");
        return bare.Replace("____", words is not null && unit.Length == 0 ? words.Split([", ", " or "], StringSplitOptions.None)[0]
            : Usual.GetValueOrDefault(unit, "4"), StringComparison.Ordinal);
    }

    private static (IReadOnlyList<Finding>? Findings, string Problems) Findings(string text)
    {
        var outcome = Checker.Check([BuildSource.Text("build.yaml", text)]);
        return (outcome.Result?.Builds[0].Findings, string.Join('\n', outcome.Problems.Select(p => p.ToString())));
    }

    // A limit on one side.
    [GeneratedRegex("^([0-9.]+ [a-zA-Z0-9]+) or (?:more|less)$")]
    private static partial Regex Value();

    [GeneratedRegex("____( [^}]*)?(?=})")]
    private static partial Regex Blank();
}
