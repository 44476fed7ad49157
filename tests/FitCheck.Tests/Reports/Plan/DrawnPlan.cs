using System.Globalization;
using System.Xml.Linq;
using FitCheck.Catalog;
using FitCheck.Foundation.Problems;
using FitCheck.Reports.Svg;
using FitCheck.Reports.Svg.Plan;

namespace FitCheck.Tests.Reports.Plan;

/// <summary>A rectangle on the paper.</summary>
internal sealed record Area(string Of, double Left, double Top, double Right, double Bottom)
{
    public bool Meets(Area other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;
}

/// <summary>A plan read back from its markup, as a browser would see it.</summary>
internal sealed class DrawnPlan
{
    public DrawnPlan(Vehicle vehicle, IReadOnlyList<PlanPlace> places, string? current = null)
    {
        Markup = CarPlan.Draw("p", vehicle, places, current).ToString();
        Root = XDocument.Parse(Markup).Root!;
        Links = [.. Root.Elements("a")];
        Width = Number(Root, "width");
        Height = Number(Root, "height");
    }

    public static IReadOnlyList<Vehicle> Vehicles { get; } = OfCatalog();

    public string Markup { get; }

    public XElement Root { get; }

    public IReadOnlyList<XElement> Links { get; }

    public double Width { get; }

    public double Height { get; }

    public static Vehicle Named(string id) => Vehicles.Single(v => v.Id == id);

    /// <summary>Each line of text with the room that its letters take.</summary>
    public IReadOnlyList<Area> Words => [.. Links.SelectMany(a => a.Elements("text"), (a, t) => AreaOf(t, Place(a)))];

    public IReadOnlyList<Area> Marks => [.. Links.Select(a => Around(MarkOf(Place(a)), 8, Place(a)))];

    public static string Place(XElement link) => link.Attribute("data-place")!.Value;

    public Spot MarkOf(string place)
    {
        var dot = Links.Single(a => Place(a) == place).Elements("circle").Single();
        return new(Number(dot, "cx"), Number(dot, "cy"));
    }

    public double LabelMiddleOf(string place)
    {
        var words = Words.Where(w => w.Of == place).ToList();
        return (words.Min(w => w.Left) + words.Max(w => w.Right)) / 2;
    }

    private static Area Around(Spot spot, double half, string of) => new(of, spot.X - half, spot.Y - half, spot.X + half, spot.Y + half);

    // From a little above the small letters' height to below their descenders: 0.75 and 0.2 of the size.
    private static Area AreaOf(XElement text, string of)
    {
        var style = text.Attribute("class")!.Value;
        var size = style is "tick" or "changed" ? Lettering.Tick : Lettering.Label;
        var width = Lettering.WidthOf(text.Value, size, bold: style.StartsWith("state", StringComparison.Ordinal));
        var (x, y) = (Number(text, "x"), Number(text, "y"));
        var left = text.Attribute("text-anchor")?.Value switch { "end" => x - width, "middle" => x - (width / 2), _ => x };
        return new(of, left, y - 8.3, left + width, y + 2.2);
    }

    private static double Number(XElement element, string name) =>
        double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    private static List<Vehicle> OfCatalog()
    {
        var problems = new ProblemList();
        var catalog = PartsCatalog.Open([RepositoryRoot.Of("catalog")], problems);
        return [.. catalog.IdsOf("vehicle").Select(catalog.Find).OfType<Vehicle>().OrderBy(v => v.Id, StringComparer.Ordinal)];
    }
}
