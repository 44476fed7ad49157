using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Evaluation;
using FitCheck.Measuring;
using Xunit;

namespace FitCheck.Tests.Measuring;

/// <summary>A reading comes into the text of a build, and nothing else changes, not a byte.</summary>
public class ReadingWriterTests
{
    private static readonly DatumKey Depth = new("front-door-left", DatumKey.Position, "mounting.depth");
    private static readonly DatumKey Glass = new("front-door-left", DatumKey.Position, "mounting.obstructions.window glass.depth");
    private static readonly DateOnly Day = new(2026, 11, 2);

    private const string Plain = "vehicle: tansy-hatch  # the blue one\nfit:\n  - {at: front-door-left, driver: orrin-c165}\n";

    private static string Written(string text, DatumKey key, string value = "71 mm", string? tolerance = "0.5 mm")
    {
        var (written, wrong) = ReadingWriter.Written(text, key, new TypedReading(value, tolerance), Day);
        Assert.Null(wrong);
        return written!;
    }

    [Fact]
    public void A_build_without_readings_gets_them_at_its_end() => Assert.Equal(
        Plain.TrimEnd('\n') + "\n\nreadings:\n  - {at: front-door-left, of: mounting.depth, "
            + "value: 71 mm, tolerance: 0.5 mm, on: 2026-11-02}\n",
        Written(Plain, Depth));

    [Fact]
    public void Further_ones_stand_behind_the_last() => Assert.Equal(
        Plain + "readings:  # with the long gauge\n  - {at: front-door-left, of: mounting.depth, value: 70 mm}  # twice\n"
            + "  - {at: front-door-left, of: obstructions.window glass.depth, value: 71 mm, tolerance: 0.5 mm, on: 2026-11-02}\n# end\n",
        Written(Plain + "readings:  # with the long gauge\n  - {at: front-door-left, of: mounting.depth, value: 70 mm}  # twice\n# end\n",
            Glass));

    [Fact]
    public void One_of_the_same_datum_is_replaced_with_its_day() => Assert.Equal(
        Plain + "readings:\n  - {at: front-door-left, of: obstructions.window glass.depth, "
            + "value: 71 mm, on: 2026-11-02, tolerance: 0.5 mm}  # twice\n",
        Written(Plain + "readings:\n  - {at: front-door-left, of: obstructions.window glass.depth, "
            + "value: 70 mm, on: 2025-01-01}  # twice\n", Glass));

    [Fact]
    public void What_a_line_has_measured_is_replaced_there() => Assert.Equal(
        "vehicle: tansy-hatch\nfit:\n  - at: front-door-left\n    driver: orrin-c165\n    measured: {depth: 71 mm ± 0.5 mm}  # by me\n",
        Written("vehicle: tansy-hatch\nfit:\n  - at: front-door-left\n    driver: orrin-c165\n    measured: {depth: 70 mm}  # by me\n",
            Depth));

    [Fact]
    public void What_a_line_has_measured_of_several_places_is_left_to_its_owner() => Assert.Contains("several places",
        ReadingWriter.Written("vehicle: tansy-hatch\nfit:\n  - at: [front-door-left, front-door-right]\n    measured: {depth: 70 mm}\n",
            Depth, new TypedReading("71 mm", null), Day).Wrong, StringComparison.Ordinal);

    [Fact]
    public void Line_ends_stay_those_of_the_file()
    {
        var written = Written(Plain.Replace("\n", "\r\n", StringComparison.Ordinal), Depth);

        Assert.Equal(written.Count(c => c == '\n'), written.Count(c => c == '\r'));
    }

    [Fact]
    public void Every_reference_build_takes_a_reading_and_keeps_its_bytes()
    {
        var checker = Checker.Open(new CheckerOptions { Catalogs = [RepositoryRoot.Of("catalog")], Rules = [RepositoryRoot.Of("rules")] })
            .Checker!;
        foreach (var file in Directory.GetFiles(RepositoryRoot.Of("catalog", "builds"), "*.yaml"))
        {
            var text = File.ReadAllText(file);
            var key = new DatumKey("orrin-c165", "driver", "dimensions.depth");
            var written = Written(text, key, "57 mm");

            var line = Assert.Single(written.Split('\n').Except(text.Split('\n')), l => l.Contains("orrin-c165", StringComparison.Ordinal));
            Assert.Equal(text.Replace("\n", "", StringComparison.Ordinal), written.Replace(line, "", StringComparison.Ordinal)
                .Replace(text.Contains("\nreadings:", StringComparison.Ordinal) ? "\n\n\n" : "readings:", "", StringComparison.Ordinal)
                .Replace("\n", "", StringComparison.Ordinal));
            Assert.NotNull(checker.Check([BuildSource.Text("build.yaml", written)]).Result);
        }
    }
}
