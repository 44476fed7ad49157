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
        var misses = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var (build, _, meant, other) in Judged.Value)
        {
            foreach (var (one, two) in new[] { (meant, other), (other, meant) })
            {
                foreach (var finding in one.Findings.Where(f => f.Status == Status.Pass))
                {
                    var twin = two.Findings.FirstOrDefault(f => f.Rule == finding.Rule && f.Position == finding.Position
                        && f.At == finding.At);
                    if (twin is null || twin.Status != finding.Status || !Alike(twin.Value?.Value, finding.Value?.Value))
                        misses.Add($"{finding.Rule}: {finding.Status.Word()} {finding.Value?.Value}, {twin?.Status.Word() ?? "gone"} "
                            + $"{twin?.Value?.Value} ({build}, {finding.Position})");
                }
            }
        }
        foreach (var miss in misses)
            output.WriteLine(miss);
        Assert.Empty(misses);
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
