using FitCheck.Builds.Readable;

namespace FitCheck.Facts.Values;

/// <summary>A key that an entry or a build may have and does not.</summary>
/// <param name="Key">As it is to be written: `mounting.depth`.</param>
/// <param name="Of">Of what, for a person: `Left front door`.</param>
/// <param name="Where">Where to write it: `catalog/vehicles/alder-mpv.yaml, position front-door-left`.</param>
internal sealed record UnwrittenKey(string Key, string Of, string Where)
{
    /// <summary>What a reading of it is called.</summary>
    public required DatumKey Reading { get; init; }

    /// <summary>The words with which an order begins.</summary>
    public const string Begins = "Write it as `";

    /// <summary>What is to be done with what was found out.</summary>
    public string Order => $"{Begins}{Key}` into {Where}.";

    /// <summary>
    /// How many words of the key a person's name for a datum has: `depth behind the panel` has the one of `mounting.depth`.
    /// </summary>
    public int Likeness(string what)
    {
        var words = what.Split([' ', ',', '(', ')'], StringSplitOptions.RemoveEmptyEntries);
        return Key.Split('.', '_').Count(k => Array.Exists(words, w => string.Equals(w, k, StringComparison.OrdinalIgnoreCase)));
    }
}
