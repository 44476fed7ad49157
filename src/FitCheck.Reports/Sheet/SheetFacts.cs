using FitCheck.Facts.Values;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Sheet;

/// <summary>The facts of one subject as the sheet writes them: a value, or a blank to be filled in.</summary>
internal sealed class SheetFacts(FactTable table)
{
    /// <summary>A line to write on.</summary>
    public const string Blank = "________";

    public string Key => table.Key;

    public string Name => table.Name;

    public bool Is(TruthFact fact) => Value(fact)?.Truth == true;

    public string? Word(WordFact fact) => Value(fact)?.Word is { Length: > 0 } word ? word : null;

    /// <summary>The name of a part without what stands behind its comma.</summary>
    public string? Part(WordFact fact) => Word(fact) is { } name ? Names.Short(name) : null;

    public double? Number(NumberFact fact) => Value(fact)?.Number?.Value;

    /// <summary>True when a guess stands behind the fact.</summary>
    public bool IsGuess(Fact fact) => Value(fact)?.IsEstimated == true;

    /// <summary>`158 mm`, `158 mm (from a guess)`, or `________ mm` when nothing is known.</summary>
    public string Shown(Fact fact, string unit) => Value(fact) switch
    {
        { IsKnown: true, IsEstimated: true } guess => $"{guess.Text} (from a guess)",
        { IsKnown: true } known => known.Text,
        _ => $"{Blank} {unit}",
    };

    /// <summary>A length that is cut, drilled or bought, as <see cref="Figures.Sized"/> writes it; a blank when nothing is known.</summary>
    public string Sized(NumberFact fact, bool orMore) => Number(fact) is { } metres
        ? $"{Figures.Sized(metres * 1000, orMore)}{(IsGuess(fact) ? " (from a guess)" : "")}" : $"{Blank} mm";

    /// <summary>What the plan counts on, to be compared with what is there.</summary>
    public string Planned(Fact fact) => Value(fact) is { IsKnown: true } ? $"planned: {Shown(fact, "")}" : "the plan can't tell";

    /// <summary>Every subject of a kind, in the order of the build.</summary>
    public static List<SheetFacts> Of(Evaluation.BuildResult build, Subject subject) =>
        [.. build.Facts.Where(t => t.Subject == subject).Select(t => new SheetFacts(t))];

    private FactValue? Value(Fact fact) => table.Of(fact);
}
