using FitCheck.Reports.Format;
using FitCheck.Tests.Cli;
using Xunit;

namespace FitCheck.Tests.Reports;

/// <summary>The lines for customer, date and shop on what is printed.</summary>
public sealed class SlipTests : IDisposable
{
    private const string Build = "catalog/builds/tansy-quote.yaml";
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("check")]
    [InlineData("list")]
    public void Without_a_name_all_three_are_left_to_be_filled_in(string command)
    {
        var page = Page(command);
        foreach (var line in new[] { "Customer", "Date", "Shop" })
            Assert.Contains($"<dt>{line}</dt><dd></dd>", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("check")]
    [InlineData("list")]
    public void A_name_fills_its_line_and_nothing_else(string command)
    {
        var (blank, page) = (Page(command), Page(command, "--for", "Order 417\nNorth <b>& \"Sons\""));
        Assert.Contains("<dt>Customer</dt><dd>Order 417 North &lt;b&gt;&amp; &quot;Sons&quot;</dd>", page, StringComparison.Ordinal);
        Assert.Equal(blank, page.Replace("Order 417 North &lt;b&gt;&amp; &quot;Sons&quot;", "", StringComparison.Ordinal)
            .Replace(" class=\"filled\"", "", StringComparison.Ordinal));
        Assert.Equal(blank, Page(command, "--for", "  "));
    }

    [Theory]
    [InlineData("check")]
    [InlineData("list")]
    public void A_name_that_no_page_can_show_is_refused(string command)
    {
        var (status, output, error) = Run.Of(_folder.Path, [command, RepositoryRoot.Of(Build), "--for", "Order 417"]);
        Assert.Equal((3, ""), (status, output));
        Assert.Equal("fitcheck: --for writes a name on the page to print: give --format html with it\n", error);
    }

    [Fact]
    public void No_other_format_keeps_the_name()
    {
        foreach (var format in FitCheck.Reports.ReportList.Formats.Where(f => f != "html"))
        {
            Assert.Equal(ReportSnapshotTests.Written(format, SampleResult.Full),
                ReportSnapshotTests.Written(format, SampleResult.Full, ReportOptions.Default with { Customer = "Order 417" }));
        }
    }

    private string Page(string command, params string[] options)
    {
        var (status, output, error) = Run.Of(_folder.Path, [command, RepositoryRoot.Of(Build), "--format", "html", .. options]);
        Assert.True(status is 0 or 1, error);
        return output;
    }
}
