using FitCheck.Evaluation;
using FitCheck.Findings;
using Xunit;

namespace FitCheck.Tests.Reports;

public sealed class SettingsTests
{
    private static readonly CheckResult Result = new("fitcheck 0.1.0", "sha256:0", [SampleResult.Build with
    {
        Settings = [new StartingPoint(["Front door <left>"], "High-pass", "70 Hz or higher")],
    }]);

    [Fact]
    public void Text_tells_them_in_a_block_of_their_own() =>
        Assert.Contains("Settings to start from\n  - Front door <left>: High-pass: 70 Hz or higher.\n",
            ReportSnapshotTests.Written("text", Result), StringComparison.Ordinal);

    [Fact]
    public void Html_tells_them_escaped_in_a_table() =>
        Assert.Contains(
            "<th scope=\"row\">High-pass</th><td data-label=\"Where\">Front door &lt;left&gt;</td><td data-label=\"To\">70 Hz or "
                + "higher</td>", ReportSnapshotTests.Written("html", Result), StringComparison.Ordinal);

    [Fact]
    public void Without_any_nothing_is_said() =>
        Assert.DoesNotContain("Settings to start from", ReportSnapshotTests.Written("html", SampleResult.Full), StringComparison.Ordinal);
}
