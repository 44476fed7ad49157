using FitCheck.Facts.Values;
using FitCheck.Physics.Numerics;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Entries;

/// <summary>
/// How far a figure is from the middle of its class. A class says nothing of itself: from how many on it counts, and what is far, is the
/// rule's business.
/// </summary>
internal sealed class FigureFacts
{
    public static readonly FactGroup Declarations = new(Subject.Figure);

    public static readonly WordFact Figure = Declarations.Word(
        "figure", "What is compared: `depth`, `fs`, `price a piece`.",
        Reads.Entry.Itself);
    public static readonly WordFact ClassName = Declarations.Word(
        "class_name", "The entries that it is compared with.",
        Reads.Entry.Itself);
    public static readonly WordFact FigureOf = Declarations.Word(
        "figure_of", "Name of the entry or position that has it.",
        Reads.Entry.Itself);
    public static readonly WordFact Written = Declarations.Word("written", "The figure as stated, levels at 1 W.", Reads.Entry.Itself);
    public static readonly WordFact ClassMiddle = Declarations.Word("class_middle", "The median of the class.", Reads.Entry.Itself);
    public static readonly NumberFact ClassCount = Declarations.Number(
        "class_count", Dimension.One, "How many of the class have this figure.",
        Reads.Entry.Itself);
    public static readonly NumberFact ClassScore = Declarations.Number(
        "class_score", Dimension.One,
        "Distance from the median in spreads of the class, the spread being 1.4826 times the median distance; of logarithms, or of "
        + "decibels.",
        Reads.Entry.Itself);
    public static readonly NumberFact ClassFactor = Declarations.Number(
        "class_factor", Dimension.One, "How many times the figure is larger or smaller than the median.",
        Reads.Entry.Itself);
    public static readonly NumberFact ClassGap = Declarations.Number(
        "class_gap", Dimension.Decibel, "How far a level is from the median, without sign.",
        Reads.Entry.Itself);

    private static readonly string[] Names = [.. Declarations.Select(d => d.Name)];

    private readonly FigureClass _class;
    private readonly double[] _compared;
    private readonly Func<int, FigureSample> _sample;
    private readonly Middle _middle;
    private readonly Lazy<FigureSample> _nearest;
    private readonly FactValue _figure;
    private readonly FactValue _count;
    private readonly FactTable _brief;
    private int _turned;

    /// <param name="own">The class.</param>
    /// <param name="values">Its figures: SI, decibels, or amounts.</param>
    /// <param name="sample">One of them with all that is told of it, by its number; asked for where something is found.</param>
    public FigureFacts(FigureClass own, IReadOnlyList<double> values, Func<int, FigureSample> sample)
    {
        (_class, _sample) = (own, sample);
        _compared = [.. values.Select(own.Compared)];
        _middle = Middle.Of(_compared);
        _nearest = new(() => sample(Enumerable.Range(0, _compared.Length).MinBy(Gap)), LazyThreadSafetyMode.None);
        (_figure, _count) = (FactValue.Of(own.Figure), FactValue.Of(Dimension.One, _middle.Count));
        _brief = new FactTable(Subject.Figure, own.Name, own.Name,
            new FactsOnDemand(Names, name => Of(name, _turned), InBrief))
        { At = new Foundation.Problems.Location("", 0, 0) };
    }

    public int Count => _compared.Length;

    /// <summary>The facts of one figure.</summary>
    public FactTable TableOf(int number)
    {
        var sample = _sample(number);
        return new FactTable(Subject.Figure, sample.Name, sample.Name,
            new FactsOnDemand(Names, name => Of(name, number)))
        { At = sample.At };
    }

    /// <summary>The facts of one figure, to be judged in brief; they hold until those of another one are asked for.</summary>
    public FactTable BriefTableOf(int number)
    {
        _turned = number;
        return _brief;
    }

    private double Gap(int number) => Math.Abs(_compared[number] - _middle.Median);

    private Brief InBrief(string name) => name switch
    {
        "figure" => Brief.Of(_figure),
        "class_count" => Brief.Of(_count),
        "class_score" => InBrief(_middle.Score(_compared[_turned])),
        "class_gap" when _class.IsLevel => InBrief(Gap(_turned)),
        "class_factor" when !_class.IsLevel => InBrief(Math.Exp(Gap(_turned))),
        _ => Brief.Of(Of(name, _turned)),
    };

    private static Brief InBrief(double number) => Brief.Of(Uncertain.Exact(number));

    private FactValue? Of(string name, int number) => name switch
    {
        "figure" => _figure,
        "class_name" => FactValue.Of(_class.Name),
        "figure_of" => FactValue.Of(_sample(number).Name),
        "written" => FactValue.Of(_sample(number).Written),
        "class_middle" => FactValue.Of(_class.Told(_class.IsLevel ? _middle.Median : Math.Exp(_middle.Median))),
        "class_count" => _count,
        "class_score" => FactValue.Of(Dimension.One, _middle.Score(_compared[number])),
        "class_gap" when _class.IsLevel => FactValue.Of(Dimension.Decibel, Gap(number)) with { Data = Data(number) },
        "class_factor" when !_class.IsLevel => FactValue.Of(Dimension.One, Math.Exp(Gap(number))) with { Data = Data(number) },
        _ => null,
    };

    private Datum[] Data(int number)
    {
        var (sample, nearest) = (_sample(number), _nearest.Value);
        return [new($"{_class.Figure}: {sample.Written}", sample.At),
            new($"nearest to the middle of the class: {nearest.Written}, {nearest.Name}", nearest.At)];
    }
}
