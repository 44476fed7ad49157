using System.Text.RegularExpressions;

namespace FitCheck.Cli.NewParts;

/// <summary>Gives a starting file the id that the name of its file asks for.</summary>
internal static partial class StarterFor
{
    /// <summary>
    /// The starter under another id, also where its comments name its file; null when the file's name can't be an id with `.yaml`.
    /// </summary>
    public static string? File(string starter, string name)
    {
        if (!Name().IsMatch(name) || Id().Match(starter) is not { Success: true } own)
            return null;
        var id = name[..^".yaml".Length];
        return Id().Replace(starter, "id: " + id, 1).Replace($"/{own.Groups["id"].Value}.yaml", $"/{id}.yaml", StringComparison.Ordinal);
    }

    /// <summary>That the name of a file can't be an id.</summary>
    public static string WrongName(string file) =>
        $"{file}: the name of a catalog file is the id of its entry and `.yaml`: lower-case letters, digits and single hyphens, such as "
            + "`spacer-165-tilt-8.yaml`";

    // As the schema has it.
    [GeneratedRegex(@"\A[a-z0-9]+(-[a-z0-9]+)*\.yaml\z",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Name();

    [GeneratedRegex(@"^id: (?<id>[a-z0-9-]+)",
        RegexOptions.Multiline | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Id();
}
