using System.Text.RegularExpressions;
using FitCheck.Evaluation;
using FitCheck.Physics.Quantities;
using FitCheck.Reports;
using FitCheck.Reports.Format;
using FitCheck.Reports.Sheet;
using Xunit;

namespace FitCheck.Tests.Reports;

/// <summary>Reports that tell lengths in inches:
/// no millimetre is left but in what parts are called, and the numbers are the same lengths.</summary>
public partial class InchTests
{
    private static readonly Checker Checker = FitCheck.Checker.Open(new CheckerOptions
    {
        Catalogs = [RepositoryRoot.Of("catalog")],
        Rules = [RepositoryRoot.Of("rules")],
    }).Checker!;

    private static readonly ReportOptions Options = ReportOptions.Default with
    {
        TemplatesDirectory = RepositoryRoot.Of("reports"),
        Verbose = true,
    };

    private static CheckResult Checked(string name, string? units = null)
    {
        var text = File.ReadAllText(RepositoryRoot.Of("catalog", "builds", name + ".yaml"));
        return Checker.Check([BuildSource.Text("build.yaml", units is null ? text : $"units: {units}\n{text}")]).Result!;
    }

    private static string Told(CheckResult result, string format)
    {
        using var text = new StringWriter { NewLine = "\n" };
        if (format == "sheet")
            SheetReport.Write(result, Options, text);
        else
            ReportList.Find(format)!.Write(result, Options, text);
        return text.ToString();
    }

    [Theory]
    [InlineData("text")]
    [InlineData("markdown")]
    [InlineData("html")]
    public void A_build_that_says_inch_is_told_in_inches(string format)
    {
        var told = Told(Checked("alder-missing-data", "inch"), format);

        Assert.Contains(" in or more", told, StringComparison.Ordinal);
        Assert.Contains("value: ____ in}", told, StringComparison.Ordinal);
        Assert.DoesNotMatch(WithDecimals(), told); // 14 mm and the like are parts' names, which stay
    }

    [Fact]
    public void The_same_finding_has_the_same_length()
    {
        var millimetres = Checked("alder-missing-data").Builds[0].Findings;
        var inches = Checked("alder-missing-data", "inch").Builds[0].Findings;
        var compared = 0;
        foreach (var (mm, inch) in millimetres.Zip(inches))
        {
            Assert.Equal((mm.Rule, mm.Position, mm.Status, mm.Value?.Value, mm.Unit, mm.Fingerprint),
                (inch.Rule, inch.Position, inch.Status, inch.Value?.Value, inch.Unit, inch.Fingerprint));
            if (Length().Match(mm.ValueText) is { Success: true } one && Length().Match(inch.ValueText) is { Success: true } other
                && mm.ValueText.EndsWith("mm", StringComparison.Ordinal))
            {
                compared++;
                // 25.4 mm an inch; each is rounded to its last digit
                Assert.Equal(QuantityText.ParseNumber(one.Groups[1].Value)!.Value,
                    QuantityText.ParseNumber(other.Groups[1].Value)!.Value * 25.4, 0.2);
            }
        }
        Assert.True(compared > 5, $"only {compared} lengths were compared");
    }

    [Fact]
    public void The_sheet_of_the_workshop_has_both_and_a_hole_its_fraction()
    {
        using var both = Lengths.Asked(LengthUnits.Both);
        var sheet = Told(Checked("front-rear-two-amps"), "sheet");

        Assert.Matches("the driver needs [0-9.]+ mm \\((?:[0-9]+ )?[0-9]+(?:/[0-9]+)? in\\)", sheet);
        Assert.Matches("[0-9.]+ mm \\([0-9.]+ in\\)", sheet);
    }

    [GeneratedRegex("(?<!tabs of )(?<!and )[0-9]\\.[0-9] mm\\b(?!/)")]
    private static partial Regex WithDecimals();

    [GeneratedRegex("^(-?[0-9.]+) ")]
    private static partial Regex Length();
}
