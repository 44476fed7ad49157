using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Values;

/// <summary>
/// The key of a fact, declared once in the class that computes it. What rules may name, what is explained of it, what a chart settles once,
/// on what a change has to act and which data are asked for all follow from here.
/// </summary>
/// <param name="Subject">What it is a fact of.</param>
/// <param name="Name">As rules name it.</param>
/// <param name="Type">Number of a dimension, truth or word.</param>
/// <param name="Meaning">In one sentence.</param>
/// <param name="Inputs">What it reads.</param>
internal abstract record Fact(Subject Subject, string Name, FactType Type, string Meaning, IReadOnlyList<Input> Inputs)
{
    /// <summary>Which of driver, mounting part and place it rests on; a fact that reads anything else rests on the build.</summary>
    public RestsOn RestsOn { get; } = Inputs.Count == 0 ? RestsOn.Build
        : Inputs.Aggregate(RestsOn.Nothing, (all, input) => all | input.Source.RestsOn);

    /// <summary>
    /// What is so where it is not true, or not the word `{0}`, in the few words of "no amplifier", "not a {0}"; null where its meaning says
    /// it.
    /// </summary>
    public string? No { get; private set; }

    /// <summary>What is so where it is true: "in a cup"; null where its meaning says it.</summary>
    public string? Yes { get; private set; }

    internal void Say(string? no, string? yes) => (No, Yes) = (no, yes);

    /// <summary>Two keys are the same when they are of one subject and one name.</summary>
    public virtual bool Equals(Fact? other) => other is not null && Subject == other.Subject && Name == other.Name;

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Subject, Name);
}

/// <summary>A number in SI.</summary>
internal sealed record NumberFact(Subject Subject, string Name, Dimension Dimension, string Meaning, IReadOnlyList<Input> Inputs)
    : Fact(Subject, Name, FactType.Number(Dimension), Meaning, Inputs);

/// <summary>Yes or no.</summary>
internal sealed record TruthFact(Subject Subject, string Name, string Meaning, IReadOnlyList<Input> Inputs)
    : Fact(Subject, Name, FactType.Truth, Meaning, Inputs);

/// <summary>A word, such as a name or a way of wiring.</summary>
internal sealed record WordFact(Subject Subject, string Name, string Meaning, IReadOnlyList<Input> Inputs)
    : Fact(Subject, Name, FactType.Word, Meaning, Inputs);

/// <summary>How facts say in a few words why a rule does not apply.</summary>
internal static class FactPhrases
{
    /// <summary>Adds the words to a declaration.</summary>
    /// <param name="fact">The key.</param>
    /// <param name="no">Where it is not so; null leaves it to the meaning.</param>
    /// <param name="yes">Where it is so.</param>
    public static T Saying<T>(this T fact, string? no, string? yes = null)
        where T : Fact
    {
        fact.Say(no, yes);
        return fact;
    }
}
