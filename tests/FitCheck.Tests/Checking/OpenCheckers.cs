using FitCheck.Evaluation;
using FitCheck.Foundation.Problems;
using FitCheck.Reports;
using FitCheck.Reports.Charts;
using FitCheck.Reports.Format;
using FitCheck.Reports.Lists;
using FitCheck.Reports.Suggestions;
using FitCheck.Suggestions;
using Xunit;

namespace FitCheck.Tests.Checking;

/// <summary>A checker of the repository's catalog and rules, and its answers as JSON, so that they can be compared byte for byte.</summary>
internal static class OpenCheckers
{
    private static readonly Lazy<Checker> Shared = new(Opened);

    /// <summary>One for tests that change nothing.</summary>
    public static Checker OfRepository => Shared.Value;

    public static IReadOnlyList<string> Builds { get; } = [.. Directory.GetFiles(RepositoryRoot.Of("catalog", "builds"), "*.yaml")
        .Order(StringComparer.Ordinal)];

    public static string Build(string name) => RepositoryRoot.Of("catalog", "builds", name + ".yaml");

    public static Checker Opened() => Opened(RepositoryRoot.Of("catalog"));

    public static Checker Opened(params string[] catalogs)
    {
        var opened = Checker.Open(new CheckerOptions { Catalogs = catalogs, Rules = [RepositoryRoot.Of("rules")] });
        Assert.Empty(opened.Problems);
        return opened.Checker!;
    }

    public static string Json(CheckOutcome outcome) =>
        Written(w => ReportList.Find("json")!.Write(Whole(outcome.Result, outcome.Problems), ReportOptions.Default, w));

    public static string Json(ListOutcome outcome) =>
        Written(w => ListReports.Find("json")!.Write(Whole(outcome.Result, outcome.Problems), ReportOptions.Default, w));

    public static string Json(ChartOutcome outcome) =>
        Written(w => ChartReports.Find("json")!.Write(Whole(outcome.Result, outcome.Problems), ReportOptions.Default, w));

    public static string Json(SuggestOutcome outcome) =>
        Written(w => SuggestionReports.Find("json")!.Write(Whole(outcome.Result, outcome.Problems), ReportOptions.Default, w));

    public static BuildResult Judged(this Checker checker, BuildSource build) => Assert.Single(Whole(checker.Check([build])).Builds);

    private static CheckResult Whole(CheckOutcome outcome) => Whole(outcome.Result, outcome.Problems);

    private static T Whole<T>(T? result, IReadOnlyList<Problem> problems) where T : class =>
        result ?? throw new InvalidOperationException(string.Join('\n', problems));

    private static string Written(Action<TextWriter> write)
    {
        using var text = new StringWriter { NewLine = "\n" };
        write(text);
        return text.ToString();
    }
}
