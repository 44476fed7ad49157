namespace FitCheck.Page;

/// <summary>How a host wants the page.</summary>
public sealed record PageOptions
{
    /// <summary>The folder `reports`, in which `page` and `html` lie. Left out: the one beside the program.</summary>
    public string TemplatesDirectory { get; init; } = Path.Combine(AppContext.BaseDirectory, "reports");

    /// <summary>How many choices are judged by one request, so that something else can be done in between.</summary>
    public int ChoicesAtOnce { get; init; } = 10;

    /// <summary>How long changes are looked for at most.</summary>
    public TimeSpan SearchTime { get; init; } = TimeSpan.FromSeconds(60);
}
