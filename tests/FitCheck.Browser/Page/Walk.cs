using System.Net;
using System.Text.RegularExpressions;
using FitCheck.Page;

namespace FitCheck.Browser.Page;

/// <summary>Somebody's way through the page: each request carries what the answer before it left in the form.</summary>
internal sealed partial class Walk(PageEngine engine)
{
    private readonly List<(PageRequest Request, PageAnswer Answer)> _steps = [];
    private string _shown = "";

    /// <summary>What was asked, and what this engine answered.</summary>
    public IReadOnlyList<(PageRequest Request, PageAnswer Answer)> Steps => _steps;

    /// <summary>Asks for the page with nothing in it.</summary>
    public void Begin() => Ask(new PageRequest { Name = "" });

    /// <summary>Presses a button of the form, with what was typed besides; whole pages and parts by turns.</summary>
    public void Press(string action, string name = "", PageFile? file = null, params (string Field, string Value)[] typed) =>
        Ask(new PageRequest
        {
            Name = name,
            Fields =
            [
                .. Hidden().Matches(_shown)
                    .Select(m => KeyValuePair.Create(m.Groups["name"].Value, WebUtility.HtmlDecode(m.Groups["value"].Value))),
                .. typed.Select(t => KeyValuePair.Create(t.Field, t.Value)), KeyValuePair.Create("do", action),
            ],
            Files = file is null ? [] : [file],
            IsPart = name is "choices" or "ways" || _steps.Count % 2 == 0,
        });

    /// <summary>Presses the first button that begins so.</summary>
    public void PressFirst(string beginning) => Press(Buttons(beginning)[0]);

    /// <summary>Takes what is offered first in the list that was asked for last; false where nothing in it can be taken.</summary>
    public bool TakeFirst()
    {
        var offered = Button().Matches(_steps[^1].Answer.Text).FirstOrDefault(m => m.Groups["value"].Value != "more");
        if (offered is not null)
            Press(WebUtility.HtmlDecode(offered.Groups["value"].Value));
        return offered is not null;
    }

    /// <summary>What the buttons send that begin so.</summary>
    public IReadOnlyList<string> Buttons(string beginning) =>
        [.. Button().Matches(_shown).Select(m => WebUtility.HtmlDecode(m.Groups["value"].Value))
            .Where(v => v.StartsWith(beginning, StringComparison.Ordinal)).Distinct()];

    private void Ask(PageRequest request)
    {
        var answer = engine.Answer(request);
        _steps.Add((request, answer));
        // A list of choices or a paper has no form; what is pressed next is pressed on the page that has.
        if (answer.Text.Contains("name=\"text\"", StringComparison.Ordinal))
            _shown = answer.Text;
    }

    [GeneratedRegex("<input type=\"hidden\" name=\"(?<name>[a-z-]+)\" value=\"(?<value>[^\"]*)\">", RegexOptions.None, 1000)]
    private static partial Regex Hidden();

    [GeneratedRegex("<button[^>]* name=\"do\" value=\"(?<value>[^\"]*)\"", RegexOptions.None, 1000)]
    private static partial Regex Button();
}
