using System.Globalization;
using System.Text;
using System.Xml;
using FitCheck.Reports.Markup;

namespace FitCheck.Reports.Svg;

/// <summary>A point on the paper, in user units.</summary>
internal readonly record struct Spot(double X, double Y);

/// <summary>Where a text starts from.</summary>
internal enum Anchor
{
    Start,
    Middle,
    End,
}

/// <summary>
/// Writes one inline SVG through an XmlWriter, which escapes. Colours and weights are class names, given meaning by the page's style sheet,
/// so that a drawing follows light, dark and paper.
/// </summary>
internal sealed class SvgWriter : IDisposable
{
    private readonly StringBuilder _text = new();
    private readonly XmlWriter _xml;
    private bool _isInLink;

    // The id is unique in the page; ids inside the drawing start with it. Title and description say what it shows to those who can't see
    // it. A user unit is a pixel of the page, or another unit of length that is named. Of a picture nothing inside is heard or reached; a
    // group of links is one that is.
    public SvgWriter(string id, string cssClass, double width, double height, string title, string? description, string unit = "",
        bool hasLinks = false)
    {
        Id = id;
        _xml = XmlWriter.Create(_text,
            new XmlWriterSettings { OmitXmlDeclaration = true, ConformanceLevel = ConformanceLevel.Fragment, NewLineChars = "\n" });
        _xml.WriteStartElement("svg");
        Attribute("class", cssClass);
        Attribute("role", hasLinks ? "group" : "img");
        Attribute("viewBox", $"0 0 {Number(width)} {Number(height)}");
        Attribute("width", Number(width) + unit);
        Attribute("height", Number(height) + unit);
        Attribute("aria-labelledby", description is null ? $"{id}-t" : $"{id}-t {id}-d");
        Named("title", $"{id}-t", title);
        if (description is not null)
            Named("desc", $"{id}-d", description);
    }

    public string Id { get; }

    /// <summary>A hatch at 45 degrees, to be filled with <see cref="Fill"/>.</summary>
    public void Hatch(string name, double spacing, string cssClass, bool rising = true)
    {
        _xml.WriteStartElement("pattern");
        Attribute("id", $"{Id}-{name}");
        Attribute("patternUnits", "userSpaceOnUse");
        Attribute("width", Number(spacing));
        Attribute("height", Number(spacing));
        Attribute("patternTransform", rising ? "rotate(45)" : "rotate(-45)");
        Line(new(0, 0), new(0, spacing), cssClass);
        _xml.WriteEndElement();
    }

    public string Fill(string name) => $"url(#{Id}-{name})";

    public void Line(Spot from, Spot to, string cssClass)
    {
        _xml.WriteStartElement("line");
        Attribute("class", cssClass);
        Attribute("x1", Number(from.X));
        Attribute("y1", Number(from.Y));
        Attribute("x2", Number(to.X));
        Attribute("y2", Number(to.Y));
        _xml.WriteEndElement();
    }

    public void Shape(IEnumerable<Spot> corners, string cssClass, bool closed = true, string? fill = null)
    {
        _xml.WriteStartElement(closed ? "polygon" : "polyline");
        Attribute("class", cssClass);
        Attribute("fill", fill ?? "none");
        Attribute("points", string.Join(' ', corners.Select(c => $"{Number(c.X)},{Number(c.Y)}")));
        _xml.WriteEndElement();
    }

    public void Box(double x, double y, double width, double height, string cssClass, string? fill = null)
    {
        _xml.WriteStartElement("rect");
        Attribute("class", cssClass);
        Attribute("fill", fill ?? "none");
        Attribute("x", Number(x));
        Attribute("y", Number(y));
        Attribute("width", Number(Math.Max(0, width)));
        Attribute("height", Number(Math.Max(0, height)));
        _xml.WriteEndElement();
    }

    public void Dot(Spot at, double radius, string cssClass)
    {
        _xml.WriteStartElement("circle");
        Attribute("class", cssClass);
        Attribute("cx", Number(at.X));
        Attribute("cy", Number(at.Y));
        Attribute("r", Number(radius));
        _xml.WriteEndElement();
    }

    public void Text(Spot at, string text, string cssClass, Anchor anchor = Anchor.Start)
    {
        _xml.WriteStartElement("text");
        Attribute("class", cssClass);
        Attribute("x", Number(at.X));
        Attribute("y", Number(at.Y));
        if (anchor != Anchor.Start)
            Attribute("text-anchor", anchor == Anchor.Middle ? "middle" : "end");
        _xml.WriteString(Printable(text));
        _xml.WriteEndElement();
        // What is read aloud of a link is its texts one behind the other.
        if (_isInLink)
            _xml.WriteRaw(" ");
    }

    /// <summary>A filled arrow head whose tip is here, pointing along the unit vector.</summary>
    public void Arrow(Spot tip, double dx, double dy, string cssClass)
    {
        const double Length = 8, Half = 2.6;
        Shape(
        [
            tip,
            new(tip.X - (Length * dx) - (Half * dy), tip.Y - (Length * dy) + (Half * dx)),
            new(tip.X - (Length * dx) + (Half * dy), tip.Y - (Length * dy) - (Half * dx)),
        ], cssClass);
    }

    /// <summary>A shape drawn 16 units wide around this spot.</summary>
    public void Picture(Spot at, SafeHtml shape, string cssClass, double scale = 1)
    {
        _xml.WriteStartElement("g");
        Attribute("class", cssClass);
        Attribute("transform", $"translate({Number(at.X - (8 * scale))} {Number(at.Y - (8 * scale))}) scale({Number(scale)})");
        _xml.WriteRaw(shape.ToString());
        _xml.WriteEndElement();
    }

    /// <summary>A link around all that is drawn until <see cref="EndLink"/>; its texts are what is heard of it.</summary>
    public void BeginLink(string target, string cssClass, params IEnumerable<(string Name, string Value)> attributes)
    {
        _xml.WriteStartElement("a");
        Attribute("class", cssClass);
        Attribute("href", Printable(target));
        _isInLink = true;
        foreach (var (name, value) in attributes)
            Attribute(name, Printable(value));
    }

    public void EndLink()
    {
        _isInLink = false;
        _xml.WriteEndElement();
    }

    public SafeHtml Finish()
    {
        _xml.WriteEndElement();
        _xml.Flush();
        return new SafeHtml(_text.ToString());
    }

    public void Dispose() => _xml.Dispose();

    // A half is a half, whatever the last bit is that another machine's logarithm leaves: each draws the same.
    private static string Number(double value) =>
        (Math.Round(Math.Round(value, 9), 2) + 0.0).ToString("0.##", CultureInfo.InvariantCulture);

    private void Named(string element, string id, string text)
    {
        _xml.WriteStartElement(element);
        Attribute("id", id);
        _xml.WriteString(Printable(text));
        _xml.WriteEndElement();
    }

    private void Attribute(string name, string value) => _xml.WriteAttributeString(name, value);

    // XML has no way to write most control characters; a name with one must not stop the report.
    private static string Printable(string text)
    {
        var clean = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length; i++)
        {
            if (i + 1 < text.Length && XmlConvert.IsXmlSurrogatePair(text[i + 1], text[i]))
                clean.Append(text, i++, 2);
            else
                clean.Append(XmlConvert.IsXmlChar(text[i]) ? text[i] : '\uFFFD');
        }
        return clean.ToString();
    }
}
