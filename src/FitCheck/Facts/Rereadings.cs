namespace FitCheck.Facts;

/// <summary>The data to read (again) where the bounds of a fact leave a question open, worked out when somebody asks; it says nothing of the value, so all are equal.</summary>
internal sealed class Rereadings(Func<IReadOnlyList<Unsure>> work)
{
    /// <summary>Those that weigh most come first.</summary>
    public IReadOnlyList<Unsure> Told() => work();

    /// <summary>The same, each changed.</summary>
    public Rereadings Select(Func<Unsure, Unsure> change) => new(() => [.. Told().Select(change)]);

    public override bool Equals(object? obj) => obj is Rereadings;

    public override int GetHashCode() => 0;
}
