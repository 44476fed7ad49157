namespace FitCheck.Suggestions.Searching;

/// <summary>How sure the answer is, among what was tried.</summary>
/// <param name="Judged">Combinations judged by all rules.</param>
/// <param name="Foreseen">Combinations refused by a single finding: one seen before, or one looked at first.</param>
/// <param name="TooDear">Combinations that could not become better than the answers.</param>
/// <param name="Complete">False when time, or the patience with answers that add nothing to be looked at, ran out before everything was
/// looked at.</param>
public sealed record Proof(int Judged, int Foreseen, int TooDear, bool Complete)
{
    /// <summary>What it took together with another search.</summary>
    internal Proof With(Proof other) =>
        new(Judged + other.Judged, Foreseen + other.Foreseen, TooDear + other.TooDear, Complete && other.Complete);
}
