using System.Net;
using System.Text.RegularExpressions;
using FitCheck.Page;
using FitCheck.Tests.Checking;

namespace FitCheck.Tests.Page.Engine;

/// <summary>The page as a browser without scripts has it: what stands in its form is sent with each button.</summary>
internal sealed partial class PageInHand
{
    private static readonly Lazy<PageEngine> Shared = new(() =>
        new PageEngine(OpenCheckers.OfRepository, new PageOptions { TemplatesDirectory = RepositoryRoot.Of("reports") }));

    private readonly PageEngine _engine = Shared.Value;

    public PageInHand() => Html = _engine.Answer(new PageRequest { Name = "" }).Text;

    /// <summary>The last answer.</summary>
    public string Html { get; private set; } = "";

    public string Text => Field("text");

    /// <summary>What the verdict's sentence says.</summary>
    public string Sentence => WebUtility.HtmlDecode(VerdictSentence().Match(Html).Groups["said"].Value);

    /// <summary>The word of the verdict; empty where nothing is judged.</summary>
    public string Verdict => VerdictWord().Match(Html).Groups[1].Value;

    /// <summary>The values of the buttons that can be pressed.</summary>
    public IReadOnlyList<string> Buttons => [.. Button().Matches(Html).Where(m => !m.Value.Contains(" disabled", StringComparison.Ordinal))
        .Select(m => WebUtility.HtmlDecode(m.Groups[1].Value))];

    public string Field(string name) =>
        WebUtility.HtmlDecode(
            Regex.Match(Html, $"<input type=\"hidden\" name=\"{Regex.Escape(name)}\" value=\"([^\"]*)\"").Groups[1].Value);

    public PageInHand Press(string value, params (string Name, string Value)[] typed) => Ask("", value, typed, []);

    public PageInHand Give(string value, string field, string file, byte[] bytes, params (string, string)[] typed) =>
        Ask("", value, typed, [new PageFile(field, file, bytes)]);

    public PageInHand Ask(string name, string value, IReadOnlyList<(string Name, string Value)> typed, IReadOnlyList<PageFile> files,
        CancellationToken cancel = default)
    {
        Html = _engine.Answer(Request(name, value, typed, files), cancel).Text;
        return this;
    }

    /// <summary>What is not shown in its place: a file.</summary>
    public PageAnswer Answer(string name) => _engine.Answer(Request(name, "", [], []));

    public PageRequest Request(string name, string value, IReadOnlyList<(string Name, string Value)> typed,
        IReadOnlyList<PageFile> files, bool isPart = false) => new()
        {
            Name = name,
            // As browsers send text.
            Fields = [.. Hidden().Matches(Html).Select(m => KeyValuePair.Create(WebUtility.HtmlDecode(m.Groups[1].Value),
                    WebUtility.HtmlDecode(m.Groups[2].Value).ReplaceLineEndings("\r\n"))),
                .. typed.Select(t => KeyValuePair.Create(t.Name, t.Value)), KeyValuePair.Create("do", value)],
            Files = files,
            IsPart = isPart,
        };

    [GeneratedRegex("<input type=\"hidden\" name=\"([^\"]*)\" value=\"([^\"]*)\"")]
    private static partial Regex Hidden();

    [GeneratedRegex("name=\"do\" value=\"([^\"]*)\"[^>]*>")]
    private static partial Regex Button();

    [GeneratedRegex("id=\"verdict\">.*?<span>(?<said>[^<]*)</span></p>", RegexOptions.Singleline)]
    private static partial Regex VerdictSentence();

    [GeneratedRegex("id=\"verdict\"><span class=\"status status-([a-z]+)\"")]
    private static partial Regex VerdictWord();
}
