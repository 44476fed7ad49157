namespace FitCheck.Facts.Values;

/// <summary>
/// What a fact of a position is computed from, where a spacer or a cup carries the driver; without one, what rests on the mounting part
/// rests on the place instead. A chart of what fits where judges by the facts that need no build.
/// </summary>
[Flags]
internal enum RestsOn
{
    /// <summary>
    /// Settled before any part is looked at: that there is a driver, whether it is a tweeter, on what kind of mounting, and which work is
    /// accepted.
    /// </summary>
    Nothing = 0,
    Driver = 1,
    /// <summary>The spacer or the cup.</summary>
    Mount = 2,
    /// <summary>The position and its vehicle.</summary>
    Place = 4,
    /// <summary>All three, and nothing else.</summary>
    Pair = Driver | Mount | Place,
    /// <summary>
    /// Something else of a build: what feeds it, what lies beside it, what was measured. Every fact, unless its declaration says otherwise.
    /// </summary>
    Build = 8,
}
