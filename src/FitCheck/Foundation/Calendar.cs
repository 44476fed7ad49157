namespace FitCheck.Foundation;

/// <summary>
/// The day on which a question is asked. Nothing of a report hangs on it but whether a waiver with an end still holds; whoever must have
/// the same answer on every day says which day it is (<see cref="CheckerOptions.Today"/>).
/// </summary>
internal static class Calendar
{
    /// <summary>The same all over the world: UTC.</summary>
    public static DateOnly Today => DateOnly.FromDateTime(TimeProvider.System.GetUtcNow().UtcDateTime);
}
