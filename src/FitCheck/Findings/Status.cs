namespace FitCheck.Findings;

/// <summary>What a rule says, from best to worst. The order is the order of verdicts.</summary>
public enum Status
{
    Pass,
    Warn,
    Measure,
    Fail,
}

/// <summary>The one place where statuses are spelled.</summary>
public static class StatusWords
{
    /// <summary>From best to worst.</summary>
    public static readonly IReadOnlyList<string> All = ["pass", "warn", "measure", "fail"];

    public static string Word(this Status status) => All[(int)status];

    public static Status? Parse(string word) => word switch
    {
        "pass" => Status.Pass,
        "warn" => Status.Warn,
        "measure" => Status.Measure,
        "fail" => Status.Fail,
        _ => null,
    };

    public static Status Worst(IEnumerable<Status> statuses)
    {
        var worst = Status.Pass;
        foreach (var status in statuses)
            worst = WorseOf(worst, status);
        return worst;
    }

    public static Status WorseOf(Status one, Status other) => one > other ? one : other;
}
