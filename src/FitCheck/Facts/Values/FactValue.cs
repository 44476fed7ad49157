using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Values;

/// <summary>A datum that a fact was computed from: what it is, where it is written.</summary>
public sealed record Datum
{
    private readonly string _what;
    private readonly Figure? _figure;

    /// <summary>A datum in words.</summary>
    public Datum(string what, Location at) => (_what, At) = (what, at);

    /// <summary>A figure, which is put into words when somebody wants to read it: most are never told.</summary>
    public Datum(string what, Figure figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        (_what, _figure, At) = (what, figure, figure.At);
    }

    /// <summary>What it is, with its value.</summary>
    public string What => _figure is null ? _what : $"{_what}: {_figure}";

    /// <summary>Where it is written.</summary>
    public Location At { get; }

    /// <summary>Two data are equal that stand at one place and read alike.</summary>
    public bool Equals(Datum? other) => other is not null && At == other.At && What == other.What;

    /// <inheritdoc/>
    public override int GetHashCode() => At.GetHashCode();
}

/// <summary>A datum that is missing or only estimated: what to measure, and how or where.</summary>
/// <param name="What">Named as on a work sheet: "depth behind the panel of Left front door".</param>
/// <param name="How">A sentence that tells how to measure it.</param>
/// <param name="Estimated">True when a guess stands in the catalog, false when nothing does.</param>
/// <param name="Passing">
/// Given the limit that the fact must keep, which value of this datum would pass, as text ("71.3 mm or more"); null when that can't be
/// told.
/// </param>
public sealed record Unsure(string What, string How, bool Estimated, Func<PassLimit, string?>? Passing = null)
{
    /// <summary>
    /// True when the bounds of the fact already hold all that this datum can make of it: it matters only where a limit lies between them.
    /// </summary>
    public bool IsBounded { get; init; }

    /// <summary>What a reading of it is called; null where no reading answers it.</summary>
    internal DatumKey? Key { get; init; }

    /// <summary>True for what neither tape, meter nor label answers, but the maker: it is asked for last.</summary>
    public bool IsForMaker { get; init; }
}

/// <summary>The side of a limit on which a fact passes.</summary>
/// <param name="Limit">The limit, SI.</param>
/// <param name="AtLeast">True when the fact passes at the limit and above, false at it and below.</param>
public readonly record struct PassLimit(double Limit, bool AtLeast);

/// <summary>
/// A computed value: a number with uncertainty (SI), a truth or a word, or nothing when data are missing. It remembers its data, and
/// whether any of them is a guess.
/// </summary>
/// <param name="Type">What kind of value it is, known or not.</param>
public sealed record FactValue(FactType Type)
{
    /// <summary>The number, SI; null when it is not known, and for truths and words.</summary>
    public Uncertain? Number { get; init; }
    /// <summary>The truth; null when it is not known, and for numbers and words.</summary>
    public bool? Truth { get; init; }
    /// <summary>The word; null when it is not known, and for numbers and truths.</summary>
    public string? Word { get; init; }

    /// <summary>
    /// Data that are missing or estimated. A fact with any never ends as pass, but where its bounds hold all that a missing datum can be.
    /// </summary>
    public IReadOnlyList<Unsure> Unsure { get; init; } = [];

    /// <summary>Where the data stand.</summary>
    public IReadOnlyList<Datum> Data { get; init; } = [];

    /// <summary>
    /// What to read again where only the tolerances of good data leave a limit open; null where the fact itself has to be asked for.
    /// </summary>
    internal Rereadings? Rereadings { get; init; }

    /// <summary>
    /// The value within its bounds while inductances that no sheet gives lie between nothing and so many henry; null when none is missing.
    /// </summary>
    public Func<double, FactValue>? Supposing { get; init; }

    /// <summary>Overrides how the value is shown; for money, which has a currency, and for what is known within wide bounds.</summary>
    public string? Shown { get; init; }

    /// <summary>False when nothing can be said, because data are missing.</summary>
    public bool IsKnown => Type.Kind switch
    {
        FactKind.Number => Number is not null,
        FactKind.Truth => Truth is not null,
        _ => Word is not null,
    };

    /// <summary>True when any datum behind it is a guess.</summary>
    public bool IsEstimated => Unsure.Any(u => u.Estimated);

    /// <summary>An exact number, SI.</summary>
    public static FactValue Of(Dimension dimension, double si) => new(FactType.Number(dimension)) { Number = Uncertain.Exact(si) };
    /// <summary>A number with its bounds, SI.</summary>
    public static FactValue Of(Dimension dimension, Uncertain number) => new(FactType.Number(dimension)) { Number = number };
    /// <summary>
    /// A figure as it is written, without its tolerance: in doubt where it is a guess, and unknown where nobody wrote it.
    /// </summary>
    /// <param name="dimension">Of the figure.</param>
    /// <param name="figure">Null when nobody wrote it.</param>
    /// <param name="what">Names the datum.</param>
    /// <param name="ask">What to find out where it is a guess or missing.</param>
    internal static FactValue Of(Dimension dimension, Figure? figure, string what, Unsure ask)
    {
        ask = ask with { Estimated = figure is not null };
        return figure is null ? Unknown(FactType.Number(dimension), ask)
            : Of(dimension, figure.Si) with { Data = [new Datum(what, figure)], Unsure = figure.IsEstimated ? [ask] : [] };
    }

    /// <summary>A truth.</summary>
    public static FactValue Of(bool truth) => new(FactType.Truth) { Truth = truth };
    /// <summary>A word.</summary>
    public static FactValue Of(string word) => new(FactType.Word) { Word = word };
    /// <summary>Nothing, because of the data that are missing.</summary>
    public static FactValue Unknown(FactType type, params Unsure[] missing) => new(type) { Unsure = missing };

    /// <summary>For a person: `71.2 mm`, `yes`, `splice`, `unknown`.</summary>
    public string Text => Type.Kind switch
    {
        _ when !IsKnown => "unknown",
        _ when Shown is not null => Shown,
        FactKind.Number => QuantityText.Format(Number!.Value.Value, Type.Dimension),
        FactKind.Truth => Truth!.Value ? "yes" : "no",
        _ => Word!,
    };
}
