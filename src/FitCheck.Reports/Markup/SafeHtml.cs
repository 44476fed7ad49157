namespace FitCheck.Reports.Markup;

/// <summary>
/// Markup made by our own writers, which escaped every text in it. The only value that a template writes as it is; so only writers that
/// escape may make one.
/// </summary>
internal sealed record SafeHtml
{
    private readonly string _markup;

    internal SafeHtml(string markup) => _markup = markup;

    public static SafeHtml Empty { get; } = new("");

    public override string ToString() => _markup;
}
