namespace FitCheck.Facts.Values;

/// <summary>The one place where subjects are spelled.</summary>
internal static class SubjectWords
{
    public static readonly IReadOnlyList<string> All = ["position", "channel", "build", "driver", "device", "entry", "figure", "rating",
        "mirror", "reference"];

    /// <summary>True for what stands in the catalog alone: no build has it, so only `lint` asks.</summary>
    public static bool IsOfCatalog(this Subject subject) => subject >= Subject.Entry;

    /// <summary>True for what `lint` asks of entries; a driver's figures are asked about by a check of its build too.</summary>
    public static bool IsOfEntries(this Subject subject) => subject == Subject.Driver || subject.IsOfCatalog();

    public static string Word(this Subject subject) => All[(int)subject];

    public static Subject? Parse(string word) => All.ToList().IndexOf(word) is >= 0 and var index ? (Subject)index : null;
}
