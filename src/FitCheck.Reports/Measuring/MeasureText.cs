using FitCheck.Evaluation;
using FitCheck.Measuring;
using FitCheck.Reports.Format;
using FitCheck.Reports.Text;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Measuring;

/// <summary>The open readings of builds for a terminal or a pipe, in the order in which they are reached in the car.</summary>
internal static class MeasureText
{
    // A number and a dot before what is read.
    private const int Indent = 5;

    public static void Write(BuildResult build, ReportOptions options, TextWriter output)
    {
        var page = new TextPage(output, options.Columns, options.Color);
        page.Heading(build.Name);
        page.Line(0, VehicleWords.Of(build));
        page.Gap();
        var open = OpenReadings.Of(build);
        var inEntries = OpenReadings.InEntries(build);
        if (open.Count + inEntries.Count == 0)
            page.Line(0, MeasureWords.Nothing);
        var number = 0;
        foreach (var place in Places(open))
        {
            page.Heading(place[0].Place);
            foreach (var reading in place)
                WriteOne(page, reading, ++number);
            page.Gap();
        }
        if (open.Count > 0)
            page.Line(0, $"Each line belongs under `readings:` of {build.File}; "
                + $"on a terminal `fitcheck measure {FileNames.Word(build.File)}` "
                + "asks for them one by one and writes them there.");
        page.Gap();
        if (inEntries.Count == 0)
            return;
        page.Heading("What belongs into the entries");
        foreach (var item in inEntries)
            page.Hanging(2, "- ", $"{MeasureWords.Sentence(item.What)}: {item.How}");
    }

    /// <summary>Those of one place together, in their order.</summary>
    public static IEnumerable<IReadOnlyList<OpenReading>> Places(IReadOnlyList<OpenReading> open) =>
        open.GroupBy(r => r.Place, StringComparer.Ordinal).Select(g => (IReadOnlyList<OpenReading>)[.. g]);

    /// <summary>What is read, how, and what it decides.</summary>
    public static void WriteOne(TextPage page, OpenReading reading, int number, bool withLine = true)
    {
        page.Hanging(2, $"{Figures.Whole(number)}. ", MeasureWords.Here(reading));
        page.Line(Indent, reading.How);
        foreach (var decided in MeasureWords.Decides(reading))
            page.Hanging(Indent, "decides ", decided + ".");
        if (withLine)
            page.Whole(Indent, $"- {reading.Line}");
    }
}
