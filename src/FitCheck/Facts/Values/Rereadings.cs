namespace FitCheck.Facts.Values;

/// <summary>
/// The recorded data whose tolerances weigh most in a fact, worked out when somebody asks; it says nothing of the value, so all are equal.
/// </summary>
internal sealed class Rereadings(Func<IReadOnlyList<Unsure>> work)
{
    /// <summary>Those that weigh most come first.</summary>
    public IReadOnlyList<Unsure> Told() => work();

    /// <summary>What is to be read again, each changed by a function.</summary>
    public Rereadings Select(Func<Unsure, Unsure> change) => new(() => [.. Told().Select(change)]);

    public override bool Equals(object? obj) => obj is Rereadings;

    public override int GetHashCode() => 0;
}
