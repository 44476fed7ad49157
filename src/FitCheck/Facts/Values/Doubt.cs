namespace FitCheck.Facts.Values;

/// <summary>How sure the data under a value are, from the best on; of several the worst counts.</summary>
internal enum Doubt : byte
{
    /// <summary>All are recorded and none is a guess.</summary>
    None,
    /// <summary>Some are not, but the bounds of the value hold all that they can make of it; see <see cref="Unsure.IsBounded"/>.</summary>
    Bounded,
    /// <summary>Some are missing or guessed.</summary>
    Guessed,
}

/// <summary>How doubts are told and put together.</summary>
internal static class Doubts
{
    public static Doubt Of(IReadOnlyList<Unsure> unsure)
    {
        var worst = Doubt.None;
        for (var i = 0; i < unsure.Count; i++)
            worst = worst.Or(unsure[i].IsBounded ? Doubt.Bounded : Doubt.Guessed);
        return worst;
    }

    public static Doubt Or(this Doubt a, Doubt b) => a > b ? a : b;
}
