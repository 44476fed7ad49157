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
    public static string Word(this Status status) => status switch
    {
        Status.Pass => "pass",
        Status.Warn => "warn",
        Status.Measure => "measure",
        _ => "fail",
    };

    public static Status? Parse(string word) => word switch
    {
        "pass" => Status.Pass,
        "warn" => Status.Warn,
        "measure" => Status.Measure,
        "fail" => Status.Fail,
        _ => null,
    };

    public static Status Worst(IEnumerable<Status> statuses) => statuses.DefaultIfEmpty(Status.Pass).Max();
}
