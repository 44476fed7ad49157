using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Values;

/// <summary>
/// A fact in brief: its value and how far the data under it are in doubt, without the evidence that a finding tells. It holds all that
/// decides a status; judging millions of pairs needs no more, and takes no memory.
/// </summary>
internal readonly record struct Brief
{
    public static readonly Brief Unknown;

    /// <summary>An unknown of which nothing is said, not even that it is unknown.</summary>
    public static readonly Brief Unsaid = new() { IsUnsaid = true };

    // The word, or what a number becomes while missing inductances are supposed.
    private readonly object? _more;

    public bool IsKnown { get; private init; }

    /// <summary>Meant only where it is known.</summary>
    public Doubt Doubt { get; private init; }

    /// <summary>Meant only where it is known, and true or false.</summary>
    public bool IsTrue { get; private init; }

    public bool IsUnsaid { get; private init; }

    /// <summary>Meant only where it is known, and a number.</summary>
    public Uncertain Number { get; private init; }

    /// <summary>Null where it is unknown or no word.</summary>
    public string? Word => _more as string;

    /// <inheritdoc cref="FactValue.Supposing"/>
    public Func<double, FactValue>? Supposing => _more as Func<double, FactValue>;

    private Brief(object? more) => _more = more;

    public static Brief Of(in Uncertain number, Doubt doubt = Doubt.None) =>
        IsNonsense(number) ? Unknown : new() { IsKnown = true, Doubt = doubt, Number = number };

    public static Brief Of(bool truth, Doubt doubt = Doubt.None) => new() { IsKnown = true, Doubt = doubt, IsTrue = truth };

    /// <summary>A whole fact in brief; one that was never set is unknown.</summary>
    public static Brief Of(FactValue? fact)
    {
        if (fact is null)
            return Unknown;
        if (!fact.IsKnown || (fact.Number is { } n && IsNonsense(n)))
            return fact.Supposing is { } supposing ? new(supposing) : Unknown;
        var doubt = Doubts.Of(fact.Unsure);
        return fact.Type.Kind switch
        {
            FactKind.Number => new(fact.Supposing) { IsKnown = true, Doubt = doubt, Number = fact.Number!.Value },
            FactKind.Truth => Of(fact.Truth!.Value, doubt),
            _ => new(fact.Word) { IsKnown = true, Doubt = doubt },
        };
    }

    /// <summary>As a whole value, to which the evidence is still to be added.</summary>
    public FactValue As(FactType type) => !IsKnown ? new FactValue(type) : type.Kind switch
    {
        FactKind.Number => new FactValue(type) { Number = Number },
        FactKind.Truth => new FactValue(type) { Truth = IsTrue },
        _ => new FactValue(type) { Word = Word },
    };

    internal static bool IsNonsense(in Uncertain n) => double.IsNaN(n.Value) || double.IsNaN(n.Low) || double.IsNaN(n.High);
}
