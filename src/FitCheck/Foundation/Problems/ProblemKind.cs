namespace FitCheck.Foundation.Problems;

/// <summary>What sort of thing is wrong with the form of an input, for those who count or filter problems.</summary>
/// <param name="Id">`input/wrong-shape`, spelled like a rule's.</param>
/// <param name="Title">What is wrong, in a few words.</param>
/// <param name="Why">What follows when it stays.</param>
/// <param name="Advice">What to do about it.</param>
public sealed record ProblemKind(string Id, string Title, string Why, string Advice)
{
    /// <summary>A file that is missing, too large or no UTF-8 text.</summary>
    public static readonly ProblemKind Unreadable = new("input/unreadable", "A file that can't be read",
        "What can't be read can't be judged.",
        "Name a file that exists, is UTF-8 text and is small enough.");

    /// <summary>A file or folder that is passed over.</summary>
    public static readonly ProblemKind NotRead = new("input/not-read", "A file or folder that is passed over",
        "What nobody reads has no effect, whatever stands in it.",
        "Give files the ending .yaml, and name folders that hold some.");

    /// <summary>YAML that is broken or ambiguous.</summary>
    public static readonly ProblemKind BrokenYaml = new("input/broken-yaml", "YAML that is broken or ambiguous",
        "A file whose structure is in doubt would be understood by chance.",
        "Mend the line; an editor that knows YAML marks it.");

    /// <summary>A character that nobody sees, such as one that turns the direction of writing.</summary>
    public static readonly ProblemKind HiddenLetter = new("input/hidden-character", "A character that nobody sees",
        "A line with one looks like another line, and a name like another name.",
        "Delete it, and type the word anew.");

    /// <summary>A key or a value that the schema does not know.</summary>
    public static readonly ProblemKind WrongShape = new("input/wrong-shape", "A key or a value that the schema does not know",
        "A misspelled key would be passed over in silence, and the datum would be missing.",
        "Write what the schema asks for; `fitcheck schema` prints it.");

    /// <summary>A name that stands for nothing.</summary>
    public static readonly ProblemKind UnknownName = new("input/unknown-name", "A name that stands for nothing",
        "A part, a position or a device that does not exist can't be judged.",
        "Correct the spelling, or add what is missing.");

    /// <summary>A rule that can't be read, or that its own examples contradict.</summary>
    public static readonly ProblemKind BrokenRule = new("input/broken-rule", "A rule that can't be relied on",
        "A rule that can't be read, or that its own examples contradict, would judge wrongly.",
        "Mend the rule; `fitcheck explain` shows how others are written.");

    /// <summary>A waiver that matches no finding.</summary>
    public static readonly ProblemKind IdleWaiver = new("input/idle-waiver", "A waiver that matches nothing",
        "It may hide a finding that comes later, and shows that somebody expected another answer.",
        "Delete the waiver, or correct its rule and its position.");

    /// <summary>A waiver of a rule that is never waived.</summary>
    public static readonly ProblemKind ForbiddenWaiver = new("input/forbidden-waiver", "A waiver of a rule that is never waived",
        "What destroys a part, sets a vehicle on fire or stands in the way of an airbag does so whatever was agreed.",
        "Delete the waiver and change the build.");

    /// <summary>A waiver that holds anywhere, of a rule that speaks of each place by itself.</summary>
    public static readonly ProblemKind PlacelessWaiver = new("input/placeless-waiver", "A waiver that names no place",
        "It would accept the same finding at places that nobody has looked at.",
        "Write the positions, outputs or devices that were looked at into `at`.");

    /// <summary>A waiver whose last day is over.</summary>
    public static readonly ProblemKind EndedWaiver = new("input/ended-waiver", "A waiver whose last day is over",
        "What was accepted until a day counts again after it.",
        "Mend what the finding says, or agree on another day and write it into `until`.");

    /// <summary>A build that gives something else than it is meant to give.</summary>
    public static readonly ProblemKind UnmetExpectation = new("input/unmet-expectation",
        "A build that does not give what it is meant to give",
        "A mistake on purpose that begins to pass means that a rule has gone blind, or that the build was mended.",
        "Find out which, and mend the rule, the catalog, the build, or what it expects.");

    /// <summary>All else: what is well formed but doesn't go together.</summary>
    public static readonly ProblemKind Contradiction = new("input/contradiction", "Statements that contradict each other",
        "Of two statements that can't both be so, one is wrong.",
        "Keep the one that is right.");

    /// <summary>In ordinal order of their ids.</summary>
    public static IReadOnlyList<ProblemKind> All { get; } =
        [BrokenRule, BrokenYaml, Contradiction, EndedWaiver, ForbiddenWaiver, HiddenLetter, IdleWaiver, NotRead, PlacelessWaiver,
            UnknownName, UnmetExpectation, Unreadable, WrongShape];
}
