namespace FitCheck.Findings;

/// <summary>What a rule says, from best to worst. The order is the order of verdicts.</summary>
public enum Status
{
    /// <summary>What the rule asks is kept, whatever the figures' tolerances.</summary>
    Pass,
    /// <summary>It can be done, and a person should know of it.</summary>
    Warn,
    /// <summary>A figure that is missing or guessed decides: measure it.</summary>
    Measure,
    /// <summary>It does not go together.</summary>
    Fail,
}

/// <summary>The one place where statuses are spelled.</summary>
public static class StatusWords
{
    /// <summary>From best to worst.</summary>
    public static readonly IReadOnlyList<string> All = ["pass", "warn", "measure", "fail"];

    /// <summary>The word that reports use.</summary>
    public static string Word(this Status status) => All[(int)status];

    /// <summary>The status of a word; null for any other word.</summary>
    public static Status? Parse(string word) => word switch
    {
        "pass" => Status.Pass,
        "warn" => Status.Warn,
        "measure" => Status.Measure,
        "fail" => Status.Fail,
        _ => null,
    };

    /// <summary>The worst of several, in the order pass, warn, measure, fail; pass where there is none.</summary>
    public static Status Worst(IEnumerable<Status> statuses)
    {
        var worst = Status.Pass;
        foreach (var status in statuses)
            worst = WorseOf(worst, status);
        return worst;
    }

    /// <summary>The worse of two.</summary>
    public static Status WorseOf(Status one, Status other) => one > other ? one : other;
}
