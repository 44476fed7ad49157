using System.Text.RegularExpressions;

namespace FitCheck.Page.Static.Packing;

/// <summary>
/// What is there before the engine is: the engine's own first page, made once at the publish, with the policy that a web space need not
/// know to send, the scripts of this host, and words for the time until it answers.
/// </summary>
internal static partial class FirstPage
{
    public static string Of(PageEngine engine)
    {
        var page = engine.Answer(new PageRequest { Name = "" }).Text;
        var title = page.IndexOf("<title>", StringComparison.Ordinal);
        var body = Body().Match(page);
        if (title < 0 || !body.Success)
            throw new InvalidDataException("The first page has no <title> or no <body>.");
        return page.Insert(body.Index + body.Length, Part("notice.html")).Insert(title, Part("head.html"));
    }

    private static string Part(string name)
    {
        using var reader = new StreamReader(typeof(FirstPage).Assembly.GetManifestResourceStream(name)!);
        return reader.ReadToEnd();
    }

    [GeneratedRegex("<body[^>]*>", RegexOptions.None, 1000)]
    private static partial Regex Body();
}
