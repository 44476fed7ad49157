using System.Collections.Concurrent;
using System.Globalization;
using System.Text.RegularExpressions;
using FitCheck.Evaluation;
using FitCheck.Findings;
using Xunit;
using Xunit.Abstractions;

namespace FitCheck.Tests.Facts;

/// <summary>
/// A build for a car that the catalog does not have, with the nearest vehicle in its place: what was seen in the one car settles nothing of
/// the other.
/// </summary>
public sealed partial class StandInTests(ITestOutputHelper output)
{
    private static readonly Lazy<IReadOnlyList<(string Build, BuildResult Own, BuildResult Meant, BuildResult Other)>> Judged = new(All);

    [Fact]
    public void No_build_on_a_stand_in_passes()
    {
        foreach (var (build, own, meant, _) in Judged.Value)
        {
            output.WriteLine($"{build}: {own.Verdict.Word()}, meant {meant.Verdict.Word()}, "
                + $"{meant.Findings.Count(f => f.Status == Status.Measure)} to measure");
            Assert.True(meant.Verdict is Status.Measure or Status.Fail, build);
        }
    }

    // Two vehicles that agree in their layout and in nothing else: what differs between them is what a pass may not rest on.
    [Fact]
    public void What_passes_passes_alike_on_whatever_vehicle_stands_in()
    {
        var misses = Judged.Value.SelectMany(j => Misses(j.Meant, j.Other).Select(m => $"{m} ({j.Build})")).Distinct().ToList();
        foreach (var miss in misses)
            output.WriteLine(miss);
        Assert.Empty(misses);
    }

    // As far as words are answered, every fact that waits for one is known; so here the figures alone are still another car's.
    [Theory]
    [InlineData("tansy-door-swap")]
    [InlineData("tansy-dull-woofers")]
    [InlineData("tansy-rear-amplifier")]
    [InlineData("tansy-straight-to-amplifiers")]
    [InlineData("corvid-shelf-weak-signal")]
    [InlineData("gannet-tweeter-swap")]
    [InlineData("front-rear-two-amps")]
    [InlineData("sedge-sub-and-doors")]
    [InlineData("larkspur-four-ohm")]
    public void What_passes_where_words_are_answered_rests_on_no_figure_of_the_stand_in(string build)
    {
        var vehicle = StandInText.VehicleOf(build);
        var (text, result) = new StandInReadings(vehicle).Answered(StandInText.Meant(build), r => !r.Answer.IsNumber);
        var file = $"vehicles/{vehicle}.yaml";

        var misses = Misses(result, Trial.Of(text, (file, Otherwise(Trial.Entry(file))))).ToList();

        output.WriteLine($"{result.Findings.Count(f => f.Status == Status.Pass)} pass");
        foreach (var miss in misses)
            output.WriteLine(miss);
        Assert.Empty(misses);
    }

    private static IEnumerable<string> Misses(BuildResult meant, BuildResult other)
    {
        foreach (var (one, two) in new[] { (meant, other), (other, meant) })
        {
            foreach (var finding in one.Findings.Where(f => f.Status == Status.Pass))
            {
                var twin = two.Findings.FirstOrDefault(f => f.Rule == finding.Rule && f.Position == finding.Position
                    && f.At == finding.At);
                if (twin is null || twin.Status != finding.Status || !Alike(twin.Value?.Value, finding.Value?.Value))
                    yield return $"{finding.Rule} at {finding.Position}: pass {finding.Value?.Value}, {twin?.Status.Word() ?? "gone"} "
                        + $"{twin?.Value?.Value}";
            }
        }
    }

    private static bool Alike(double? one, double? other) => one == other
        || Math.Abs(one.GetValueOrDefault(double.NaN) - other.GetValueOrDefault(double.NaN)) < 1e-9;

    private static List<(string, BuildResult, BuildResult, BuildResult)> All()
    {
        var judged = new ConcurrentBag<(string, BuildResult, BuildResult, BuildResult)>();
        Parallel.ForEach(Directory.GetFiles(RepositoryRoot.Of("catalog", "builds"), "*.yaml"), path =>
        {
            var build = Path.GetFileNameWithoutExtension(path);
            var (meant, file) = (StandInText.Meant(build), $"vehicles/{StandInText.VehicleOf(build)}.yaml");
            judged.Add((build, Trial.Of(StandInText.Plain(build)), Trial.Of(meant),
                Trial.Of(meant, (file, Otherwise(Trial.Entry(file))))));
        });
        return [.. judged.OrderBy(j => j.Item1, StringComparer.Ordinal)];
    }

    // Every figure half as large again, every truth and word another one; the layout stays.
    private static string Otherwise(string entry)
    {
        string[] words = ["true|false", "full-range|filtered", "known|unknown", "separate|common", "steel|plastic", "duo-a|mini-t",
            "engine-space|cargo"];
        var lines = entry.Split('\n').Select(line =>
        {
            if (Layout().IsMatch(line))
                return line;
            line = FigureIn().Replace(line, m => $"{Half(m.Groups[1].Value)} {m.Groups[2].Value}");
            foreach (var pair in words.Select(w => w.Split('|')))
            {
                line = Regex.Replace(line, $@"(?<=: )({pair[0]}|{pair[1]})(?=[,}}\s]|$)",
                    m => m.Value == pair[0] ? pair[1] : pair[0]);
            }
            return line;
        });
        return string.Join('\n', lines);
    }

    private static string Half(string number) =>
        (1.5 * double.Parse(number, CultureInfo.InvariantCulture)).ToString("0.###", CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^\s*(- )?(id|kind|name|side|role|place|mirror_of|source|provenance|notes|factory_source|factory_channel):")]
    private static partial Regex Layout();

    [GeneratedRegex(@"(?<![\w.])(\d+(?:\.\d+)?) (mm2|mm|m|ohm|uF|mF|dB|W|V|A|Hz)\b")]
    private static partial Regex FigureIn();
}
