namespace FitCheck.Page.State;

/// <summary>The file that was opened.</summary>
/// <param name="Name">Its name without a folder; empty for a build that was begun here.</param>
/// <param name="EndsInReturns">Whether its lines end as Windows writes them, and are to be saved so.</param>
internal sealed record OpenedFile(string Name, bool EndsInReturns = false)
{
    // No name has a colon.
    private const string Returns = "crlf:";

    public static OpenedFile None { get; } = new("");

    /// <summary>A file as it was opened, by its name and the text in it.</summary>
    public static OpenedFile Of(string name, string text) => new(Plain(name),
        text.Contains('\n', StringComparison.Ordinal)
        && !text.Replace("\r\n", "", StringComparison.Ordinal).Contains('\n', StringComparison.Ordinal));

    /// <summary>A text with `\n` as the file is to hold it.</summary>
    public string Written(string text) => EndsInReturns ? text.Replace("\n", "\r\n", StringComparison.Ordinal) : text;

    /// <summary>As a field of a form holds it.</summary>
    public override string ToString() => EndsInReturns ? Returns + Name : Name;

    /// <summary>That of such a field; whatever it holds is a name.</summary>
    public static OpenedFile Parse(string? written) => written?.StartsWith(Returns, StringComparison.Ordinal) == true
        ? new(Plain(written[Returns.Length..]), EndsInReturns: true) : new(Plain(written ?? ""));

    // As it is told and offered for saving: letters that mean something to a file system or a header go.
    private static string Plain(string name) =>
        new([.. Path.GetFileName(name.Replace('\\', '/')).Where(c => !char.IsControl(c) && c is not ('"' or ':')).Take(100)]);
}
