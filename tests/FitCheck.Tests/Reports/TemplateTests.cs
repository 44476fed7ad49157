using FitCheck.Reports;
using FitCheck.Reports.Format;
using Xunit;

namespace FitCheck.Tests.Reports;

public sealed class TemplateTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fitcheck-templates-");

    public TemplateTests()
    {
        Directory.CreateDirectory(InFolder(""));
        foreach (var file in Directory.EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "reports", "html")))
            File.Copy(file, InFolder(Path.GetFileName(file)));
    }

    public void Dispose() => _folder.Delete(recursive: true);

    [Theory]
    [InlineData("page.html")]
    [InlineData("finding.html")]
    [InlineData("style.css")]
    public void A_missing_template_is_named(string file)
    {
        File.Delete(InFolder(file));
        Assert.StartsWith($"The template {InFolder(file)} can't be read.", Refused(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{{ if }}")]
    [InlineData("{{ it.nothing_of_this_name }}")]
    [InlineData("{{ part \"../../secret\" it }}")]
    public void A_wrong_template_is_named(string template)
    {
        File.WriteAllText(InFolder("card.html"), template);
        Assert.Contains(_folder.FullName, Refused(), StringComparison.Ordinal);
    }

    // Those of the program call none of them.
    [Fact]
    public void A_template_of_ones_own_may_call_what_the_engine_brings()
    {
        File.AppendAllText(InFolder("page.html"), "{{ 'our own shop' | string.upcase }}");
        using var output = new StringWriter();
        ReportList.Find("html")!.Write(SampleResult.Full, ReportOptions.Default with { TemplatesDirectory = _folder.FullName }, output);
        Assert.EndsWith("OUR OWN SHOP", output.ToString(), StringComparison.Ordinal);
    }

    private string Refused()
    {
        using var output = new StringWriter();
        var refused =
            Assert.Throws<TemplateException>(
                () => ReportList.Find("html")!.Write(SampleResult.Full,
                    ReportOptions.Default with { TemplatesDirectory = _folder.FullName }, output));
        Assert.Equal("", output.ToString());
        return refused.Message;
    }

    private string InFolder(string file) => Path.Combine(_folder.FullName, "html", file);
}
