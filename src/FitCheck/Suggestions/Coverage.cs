using FitCheck.Builds;
using FitCheck.Suggestions.Choices;
using FitCheck.Suggestions.Trials;

namespace FitCheck.Suggestions;

/// <summary>Over what an answer holds: what was tried, and what was not.</summary>
/// <param name="Tried">What could be chosen otherwise, in the order of the build.</param>
/// <param name="NotTried">What might help as well and was left aside, each in words.</param>
public sealed record Coverage(IReadOnlyList<TriedChoice> Tried, IReadOnlyList<string> NotTried)
{
    private static readonly string[] Works = ["cut-wires", "drill", "enlarge-holes", "trim-parts"];

    // What is left for when nothing nearer passes.
    private const string Added = "adding an amplifier, and a set where tweeters' places are open";

    /// <summary>The same after what is left for last was tried too.</summary>
    internal Coverage With(IReadOnlyList<TriedChoice> last) =>
        new([.. Tried, .. last], [.. NotTried.Where(n => n != Added || last.All(t => t.What != "amplifier"))]);

    /// <summary>What a search over these slots looks at.</summary>
    internal static Coverage Of(ProposalEvaluator evaluator, IReadOnlyList<Slot> slots, IReadOnlyList<string> keep, bool currentOnly) =>
        new([.. slots.Select(
            s => new TriedChoice(s.What, [.. s.Where.Select(evaluator.NameOf)], Choices(s)))],
                [.. NotTriedFor(evaluator.Build, slots, keep, currentOnly)]);

    private static IEnumerable<string> NotTriedFor(Build build, IReadOnlyList<Slot> slots, IReadOnlyList<string> keep, bool currentOnly)
    {
        if (keep.Count > 0)
            yield return $"anything else for what is to be kept ({string.Join(", ", keep.Distinct(StringComparer.Ordinal))})";
        yield return currentOnly ? "parts that are no longer made or must be ordered" : "parts that are no longer made";
        yield return Added;
        yield return "adding a source unit or a driver";
        yield return "leaving out a driver, a set, a spacer, a cup, a harness adapter, a ring or a device";
        yield return "drivers of another sort, a set in place of one driver, or single drivers in place of a set";
        yield return "another output for what is fed already";
        yield return "another choice left than right";
        yield return "settings of a part that only comes with a change, and what it would need besides";
        yield return "other lengths of cable, boxes or places for parts, and more than one further pack";
        if (Works.Any(w => !build.Accepted(w)))
            yield return "work that the build does not accept";
    }

    // In the plural, or with what comes where nothing is.
    private static string Choices(Slot slot) => slot.What switch
    {
        "driver" => $"other {string.Join(" or ", slot.Sorts.Select(s => s == "full-range" ? "full-range drivers" : s + "s"))}",
        "component set" when slot.Parts.Count > 1 => "component sets in place of single drivers",
        "module" => "another place for the crossover module",
        "speaker cable" => "speaker cables that are thicker, or as thick on a longer roll",
        "factory driver" => "factory drivers unplugged",
        "part in the line" => "other parts in the line or none",
        "capacitor" or "L-pad" => slot.Now is null ? slot.What + "s" : $"other {slot.What}s or none",
        "crossover setting" => "other settings of the crossover",
        "high-pass" or "low-pass" => Other(slot, slot.What + "es") + " in the usual steps",
        "power limit" => Other(slot, "power limits") + " in the usual steps",
        "output" => slot.Now is null ? "free outputs for drivers that none feeds" : "bridged outputs apart",
        "feed" => "other devices to feed an amplifier or line converter, a further line converter among them",
        "turn-on" => "turn-on by the ignition",
        "gain" => "other gain settings",
        "screws" or "foam tape" => Other(slot, slot.What),
        _ when slot.Where is ["extras"] => $"one further pack of {slot.What}",
        _ => Other(slot, slot.What + "s"),
    };

    private static string Other(Slot slot, string what) => slot.Now is null ? what : "other " + what;
}

/// <summary>One thing that was tried otherwise.</summary>
/// <param name="What">As a change calls it: `spacer`.</param>
/// <param name="Where">Names of positions, outputs or devices.</param>
/// <param name="Choices">What was tried there, in words: `other spacers`.</param>
public sealed record TriedChoice(string What, IReadOnlyList<string> Where, string Choices);
