using FitCheck.Physics.Quantities;
using FitCheck.Physics.Statistics;

namespace FitCheck.Facts;

/// <summary>How far a figure is from the middle of its class. A class says nothing of itself: from how many on it counts, and what is far, is the rule's business.</summary>
internal static class FigureFacts
{
    public static readonly IReadOnlyList<FactDeclaration> Declarations =
    [
        Declare.Word(Subject.Figure, "figure", "What is compared: `depth`, `fs`, `price a piece`."),
        Declare.Word(Subject.Figure, "class_name", "The entries that it is compared with."),
        Declare.Word(Subject.Figure, "figure_of", "Name of the entry or position that has it."),
        Declare.Word(Subject.Figure, "written", "The figure as stated, levels at 1 W."),
        Declare.Word(Subject.Figure, "class_middle", "The median of the class."),
        Number("class_count", Dimension.One, "How many of the class have this figure."),
        Number("class_score", Dimension.One, "Distance from the median in spreads of the class, the spread being 1.4826 times the median distance; of logarithms, or of decibels."),
        Number("class_factor", Dimension.One, "How many times the figure is larger or smaller than the median."),
        Number("class_gap", Dimension.Decibel, "How far a level is from the median, without sign."),
    ];

    private static readonly string[] Names = [.. Declarations.Select(d => d.Name)];

    /// <summary>A table for each figure of a whole catalog.</summary>
    public static IEnumerable<FactTable> Of(IEnumerable<FigureSample> samples) => ByClass(samples).SelectMany(c => c());

    /// <summary>The same by class, each worked out when it is called.</summary>
    public static IReadOnlyList<Func<IEnumerable<FactTable>>> ByClass(IEnumerable<FigureSample> samples)
    {
        var classes = new Dictionary<(string Figure, string Class), List<FigureSample>>();
        foreach (var sample in samples)
        {
            if (!classes.TryGetValue((sample.Figure, sample.Class), out var members))
                classes[(sample.Figure, sample.Class)] = members = [];
            members.Add(sample);
        }
        return [.. classes.Values.Select(members => (Func<IEnumerable<FactTable>>)(() => OfClass(members)))];
    }

    private static IEnumerable<FactTable> OfClass(List<FigureSample> members)
    {
        var middle = Middle.Of(members.Select(m => m.Compared));
        var nearest = members.MinBy(m => Math.Abs(m.Compared - middle.Median))!;
        var (figure, count) = (FactValue.Of(members[0].Figure), FactValue.Of(Dimension.One, middle.Count));
        return members.Select(m => new FactTable(Subject.Figure, m.Name, m.Name, new FactsOnDemand(Names, name => name switch
        {
            "figure" => figure,
            "class_count" => count,
            "class_score" => FactValue.Of(Dimension.One, middle.Score(m.Compared)),
            _ => Compared(name, m, middle, nearest),
        }, name => name switch
        {
            "figure" => Brief.Of(figure),
            "class_count" => Brief.Of(count),
            "class_score" => InBrief(middle.Score(m.Compared)),
            "class_gap" when m.IsLevel => InBrief(Math.Abs(m.Compared - middle.Median)),
            "class_factor" when !m.IsLevel => InBrief(Math.Exp(Math.Abs(m.Compared - middle.Median))),
            _ => Brief.Of(Compared(name, m, middle, nearest)),
        }))
        { At = m.At });
    }

    private static Brief InBrief(double number) => Brief.Of(Uncertain.Exact(number), unsure: false);

    private static FactValue? Compared(string name, FigureSample sample, Middle middle, FigureSample nearest)
    {
        var gap = Math.Abs(sample.Compared - middle.Median);
        return name switch
        {
            "class_name" => FactValue.Of(sample.Class),
            "figure_of" => FactValue.Of(sample.Name),
            "written" => FactValue.Of(sample.Written),
            "class_middle" => FactValue.Of(nearest.Told(nearest.IsLevel ? middle.Median : Math.Exp(middle.Median))),
            "class_gap" when sample.IsLevel => FactValue.Of(Dimension.Decibel, gap) with { Data = Data(sample, nearest) },
            "class_factor" when !sample.IsLevel => FactValue.Of(Dimension.One, Math.Exp(gap)) with { Data = Data(sample, nearest) },
            _ => null,
        };
    }

    private static Datum[] Data(FigureSample sample, FigureSample nearest) =>
        [new($"{sample.Figure}: {sample.Written}", sample.At), new($"nearest to the middle of the class: {nearest.Written}, {nearest.Name}", nearest.At)];

    private static FactDeclaration Number(string name, Dimension dimension, string meaning) => Declare.Number(Subject.Figure, name, dimension, meaning);
}
