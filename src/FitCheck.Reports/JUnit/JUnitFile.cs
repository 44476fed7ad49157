using System.Xml;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.JUnit;

/// <summary>How a case ended.</summary>
internal enum JUnitOutcome
{
    Passed,
    Skipped,
    Failed,
}

/// <summary>A case. <paramref name="Brief"/> stands in lists, <paramref name="Detail"/> where one case is opened.</summary>
internal sealed record JUnitCase(string Class, string Name, string File, int Line, JUnitOutcome Outcome, string Brief, string Detail)
{
    public string Type { get; init; } = "";
}

internal sealed record JUnitSuite(string Name, IReadOnlyList<(string Name, string Value)> Properties, IReadOnlyList<JUnitCase> Cases);

/// <summary>
/// Writes suites in the form that test servers agree on; there is no standard of it. No times, so that two runs give the same bytes.
/// </summary>
internal static class JUnitFile
{
    private static readonly XmlWriterSettings Layout = new()
    {
        Indent = true,
        NewLineChars = "\n",
        NewLineHandling = NewLineHandling.Entitize,
        OmitXmlDeclaration = true
    };

    /// <summary>Suites are asked for twice, to be counted and to be written, so that one at a time is in memory.</summary>
    public static void Write(string name, IEnumerable<JUnitSuite> suites, TextWriter output)
    {
        output.Write("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        using (var xml = XmlWriter.Create(output, Layout))
        {
            xml.WriteStartElement("testsuites");
            xml.WriteAttributeString("name", name);
            WriteCounts(xml, suites.SelectMany(s => s.Cases).CountBy(c => c.Outcome).ToDictionary());
            foreach (var suite in suites)
                WriteSuite(xml, suite);
            xml.WriteEndElement();
        }
        output.Write('\n');
    }

    private static void WriteSuite(XmlWriter xml, JUnitSuite suite)
    {
        xml.WriteStartElement("testsuite");
        xml.WriteAttributeString("name", PlainText.Line(suite.Name));
        WriteCounts(xml, suite.Cases.CountBy(c => c.Outcome).ToDictionary());
        xml.WriteStartElement("properties");
        foreach (var (name, value) in suite.Properties)
        {
            xml.WriteStartElement("property");
            xml.WriteAttributeString("name", name);
            xml.WriteAttributeString("value", PlainText.Line(value));
            xml.WriteEndElement();
        }
        xml.WriteEndElement();
        foreach (var one in suite.Cases)
            WriteCase(xml, one);
        xml.WriteEndElement();
    }

    private static void WriteCounts(XmlWriter xml, Dictionary<JUnitOutcome, int> cases)
    {
        xml.WriteAttributeString("tests", Figures.Whole(cases.Values.Sum()));
        xml.WriteAttributeString("failures", Figures.Whole(cases.GetValueOrDefault(JUnitOutcome.Failed)));
        xml.WriteAttributeString("errors", "0");
        xml.WriteAttributeString("skipped", Figures.Whole(cases.GetValueOrDefault(JUnitOutcome.Skipped)));
        xml.WriteAttributeString("time", "0");
    }

    private static void WriteCase(XmlWriter xml, JUnitCase one)
    {
        xml.WriteStartElement("testcase");
        xml.WriteAttributeString("classname", PlainText.Line(one.Class));
        xml.WriteAttributeString("name", PlainText.Line(one.Name));
        xml.WriteAttributeString("time", "0");
        if (one.File.Length > 0)
            xml.WriteAttributeString("file", PlainText.Line(one.File));
        if (one.Line > 0)
            xml.WriteAttributeString("line", Figures.Whole(one.Line));
        switch (one.Outcome)
        {
            case JUnitOutcome.Failed:
                xml.WriteStartElement("failure");
                xml.WriteAttributeString("message", PlainText.Line(one.Brief));
                xml.WriteAttributeString("type", one.Type);
                xml.WriteString(PlainText.Lines(one.Detail));
                xml.WriteEndElement();
                break;
            case JUnitOutcome.Skipped:
                xml.WriteStartElement("skipped");
                xml.WriteAttributeString("message", PlainText.Line(one.Brief));
                xml.WriteEndElement();
                xml.WriteElementString("system-out", PlainText.Lines(one.Detail));
                break;
            default:
                xml.WriteElementString("system-out", PlainText.Lines(one.Detail.Length > 0 ? one.Detail : one.Brief));
                break;
        }
        xml.WriteEndElement();
    }
}
