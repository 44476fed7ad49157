namespace FitCheck.Page;

/// <summary>What the browser gets.</summary>
public sealed record PageAnswer
{
    /// <summary>As HTTP counts: 200, 400 for what nobody can have meant, 404 for a name that there is not.</summary>
    public int Status { get; init; } = 200;

    /// <summary>`text/html; charset=utf-8`, or what else the body is.</summary>
    public string ContentType { get; init; } = "text/html; charset=utf-8";

    /// <summary>The body.</summary>
    public required string Text { get; init; }

    /// <summary>What it is to be saved as; null for what is shown.</summary>
    public string? SaveAs { get; init; }
}

/// <summary>A file that the page refers to by its name: a style sheet or a script. It changes only with the program.</summary>
/// <param name="Name">`style.css`.</param>
/// <param name="ContentType">What it is.</param>
/// <param name="Text">What is in it.</param>
public sealed record PageAsset(string Name, string ContentType, string Text);
