using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using FitCheck.Evaluation;
using FitCheck.Findings;
using Xunit;

namespace FitCheck.Tests.Properties;

/// <summary>What must hold for whole checks, whatever the figures.</summary>
public sealed class WholeCheckProperties
{
    private const string Vehicle = "vehicles/corvid-sedan.yaml";

    private static string Build(string driver, string at = "front-door-left") => $"""
        kind: build
        name: One door
        vehicle: corvid-sedan
        fit:
          - {"{"} at: [{at}], driver: {driver}, adapter: spacer-165-flat-10 {"}"}
          - {"{"} at: [front-tweeter-left, front-tweeter-right], disconnected: true {"}"}
        """;

    private static readonly string[] Drivers = ["orrin-w165-4", "halvard-m165-4", "pellworth-p165s", "tamsin-t165-heavy", "orrin-c165",
        "quillon-q165-3"];

    [Fact]
    public void A_deeper_cavity_never_turns_a_pass_into_a_fail() =>
        Gen.Select(One(Drivers), Gen.Double[30, 90], Gen.Double[0, 40]).Sample((driver, depth, more) =>
        {
            var shallow = Statuses(Trial.Of(Build(driver), (Vehicle, WithDepth(depth))));
            var deep = Statuses(Trial.Of(Build(driver), (Vehicle, WithDepth(depth + more))));

            foreach (var (key, status) in shallow.Where(s => s.Value == Status.Pass))
                Assert.NotEqual(Status.Fail, deep[key]);
            Assert.True(deep["mount/too-deep front-door-left"] <= shallow["mount/too-deep front-door-left"]);
        }, iter: 40);

    [Fact]
    public void A_lower_load_never_raises_the_margin() =>
        Gen.Select(One("orrin-w165-4", "halvard-m165-4", "pellworth-p165", "quillon-q165-4"), Gen.Double[0.3, 1]).Sample((driver, factor) =>
        {
            var file = $"drivers/{driver}.yaml";
            var lower = Regex.Replace(Trial.Entry(file), @"\bre: (\d+(\.\d+)?) ohm",
                m => string.Create(CultureInfo.InvariantCulture,
                    $"re: {double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture) * factor:0.####} ohm"));
            Assert.NotEqual(factor < 0.99 ? Trial.Entry(file) : "", lower);

            var before = Load(Trial.Of(Build(driver)));
            var after = Load(Trial.Of(Build(driver), (file, lower)));

            Assert.True(after.Margin <= before.Margin + 1e-9, $"{driver} × {factor}: {before.Margin} became {after.Margin}");
            Assert.True(after.Status >= before.Status);
        }, iter: 30);

    [Fact]
    public void A_mirrored_position_gets_mirrored_findings() =>
        Gen.Select(One(Drivers), Gen.Bool).Sample((driver, rear) =>
        {
            var place = rear ? "rear-door" : "front-door";
            if (rear && !Trial.Entry(Vehicle).Contains("rear-door-left", StringComparison.Ordinal))
                return;
            var left = Told(Trial.Of(Build(driver, $"{place}-left")));
            var right = Told(Trial.Of(Build(driver, $"{place}-right")));

            Assert.Equal(left.Select(Mirrored).Order(StringComparer.Ordinal), right.Order(StringComparer.Ordinal));
        }, iter: 20);

    [Fact]
    public void The_same_build_gives_the_same_findings_in_any_culture()
    {
        var here = Told(Trial.Of(Build("orrin-w165-4")));
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = DecimalComma();
            Assert.Equal(here, Told(Trial.Of(Build("orrin-w165-4"))));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static CultureInfo DecimalComma()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = ".";
        return culture;
    }

    private static Gen<string> One(params string[] of) => Gen.Int[0, of.Length - 1].Select(i => of[i]);

    private static string WithDepth(double depth)
    {
        // The drawn depth may be the catalog's own: that the entry has one is what matters.
        var pattern = new Regex(@"\n      depth: [^\n#]+");
        Assert.Matches(pattern, Trial.Entry(Vehicle));
        return pattern.Replace(Trial.Entry(Vehicle), string.Create(CultureInfo.InvariantCulture, $"\n      depth: {depth:0.###} mm"), 1);
    }

    private static Dictionary<string, Status> Statuses(BuildResult result) =>
        result.Findings.ToDictionary(f => $"{f.Rule} {f.Position}", f => f.Status);

    private static Finding Load(BuildResult result) => result.Findings.Single(f => f.Rule == "load/below-rated-load");

    private static List<string> Told(BuildResult result) =>
        [.. result.Findings.Select(
            f => FormattableString.Invariant($"{f.Rule} {f.Position} {f.Status} {f.Value?.Value:0.#####} {f.Margin:0.#####}"))];

    private static string Mirrored(string line) =>
        Regex.Replace(line, @"^(\S+ \S+)-(left|right) ", m => $"{m.Groups[1].Value}-{(m.Groups[2].Value == "left" ? "right" : "left")} ");
}
