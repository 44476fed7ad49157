using System.Text.RegularExpressions;

namespace FitCheck.Page.Static.Packing;

/// <summary>
/// What is there before the engine is: the engine's own first page, made once at the publish, with the policy that a web space need not
/// know to send, the scripts of this host, and words for the time until it answers.
/// </summary>
internal static partial class FirstPage
{
    private const string Head = """
        <meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data:; connect-src 'self'; worker-src 'self'; form-action 'none'; base-uri 'none'">
        <link rel="icon" href="data:,">
        <link rel="stylesheet" href="static.css">
        <script src="static.js"></script>

        """;

    private const string Notice = """

        <p class="loading unscripted">This page reckons in your browser, and sends nothing anywhere. For that it needs scripts and WebAssembly: please switch scripts on for it.</p>
        <div class="loading" id="loading"><p role="status">FitCheck is being loaded. What you choose is answered as soon as it is here.</p><progress aria-label="Loading FitCheck"></progress></div>
        """;

    public static string Of(PageEngine engine)
    {
        var page = engine.Answer(new PageRequest { Name = "" }).Text;
        var title = page.IndexOf("<title>", StringComparison.Ordinal);
        var body = Body().Match(page);
        if (title < 0 || !body.Success)
            throw new InvalidDataException("The first page has no <title> or no <body>.");
        return page.Insert(body.Index + body.Length, Notice).Insert(title, Head);
    }

    [GeneratedRegex("<body[^>]*>", RegexOptions.None, 1000)]
    private static partial Regex Body();
}
