using System.Globalization;
using FitCheck.Evaluation;
using FitCheck.Reports;
using FitCheck.Reports.Format;
using FitCheck.Tests.Snapshots;
using Xunit;

namespace FitCheck.Tests.Reports;

public class ReportSnapshotTests
{
    [Theory]
    [InlineData("text", "txt")]
    [InlineData("json", "json")]
    [InlineData("html", "html")]
    [InlineData("markdown", "md")]
    [InlineData("sarif", "sarif")]
    [InlineData("junit", "xml")]
    [InlineData("github", "txt")]
    public void The_sample_is_told_as_before(string format, string extension) =>
        Snapshot.Match(Written(format, SampleResult.Full), $"sample-{format}", extension);

    [Theory]
    [InlineData("text", "txt")]
    [InlineData("json", "json")]
    [InlineData("html", "html")]
    [InlineData("markdown", "md")]
    [InlineData("sarif", "sarif")]
    [InlineData("junit", "xml")]
    [InlineData("github", "txt")]
    public void The_sample_of_lint_is_told_as_before(string format, string extension) =>
        Snapshot.Match(Written(format, SampleLint.Full), $"lint-{format}", extension);

    [Fact]
    public void Verbose_text_shows_each_pass() =>
        Snapshot.Match(Written("text", SampleResult.Full, ReportOptions.Default with { Verbose = true }), "sample-text-verbose", "txt");

    [Theory]
    [MemberData(nameof(Formats))]
    public void Two_writes_give_the_same_bytes(string format) =>
        Assert.Equal(Written(format, SampleResult.Full), Written(format, SampleResult.Full));

    [Theory]
    [MemberData(nameof(Formats))]
    public void A_culture_with_decimal_commas_changes_nothing(string format)
    {
        var before = Written(format, SampleResult.Full);
        var culture = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = GermanNumbers();
            Assert.Equal("1,5", $"{1.5}");
            Assert.Equal(before, Written(format, SampleResult.Full));
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void Every_format_tells_a_result_without_builds(string format) =>
        Assert.NotNull(Written(format, new CheckResult("fitcheck 0.1.0", "sha256:0", [])));

    public static TheoryData<string> Formats() => [.. ReportList.All.Select(r => r.Format)];

    internal static string Written(string format, CheckResult result, ReportOptions? options = null)
    {
        using var output = new StringWriter { NewLine = "\r\n" };
        ReportList.Find(format)!.Write(result, options ?? ReportOptions.Default, output);
        return output.ToString();
    }

    internal static string Written(string format, LintResult result, ReportOptions? options = null)
    {
        using var output = new StringWriter { NewLine = "\r\n" };
        ((ILintReport)ReportList.Find(format)!).Write(result, options ?? ReportOptions.Default, output);
        return output.ToString();
    }

    // The program knows no culture but the invariant one, so the numbers of de-DE are set by hand.
    private static CultureInfo GermanNumbers()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = ".";
        culture.NumberFormat.NegativeSign = "−";
        return culture;
    }
}
