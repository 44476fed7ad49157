using System.Buffers;
using System.Text;
using FitCheck.Reports.Markup;
using Scriban;
using Scriban.Parsing;
using Scriban.Runtime;

namespace FitCheck.Reports.Html;

/// <summary>
/// The one place where text becomes HTML: whatever an expression of a template writes is encoded, unless one of our own writers made it
/// as <see cref="SafeHtml"/>. It holds in text and in attributes within double quotes; a template must not write elsewhere.
/// </summary>
internal sealed class HtmlContext : TemplateContext
{
    private const int Roomy = 1 << 20;

    // Of the first letters of all, to the last control.
    private static readonly SearchValues<char> Special = SearchValues.Create([.. "&<>\"'",
        .. Enumerable.Range(0, 0xA0).Select(c => (char)c).Where(c => char.IsControl(c) && c is not ('\n' or '\t'))]);

    // For somebody's own templates; those of the program take none of its functions, and it is slow to make.
    private static readonly Lazy<ScriptObject> Library = new(GetDefaultBuiltinObject);

    public HtmlContext(ScriptObject builtin)
        : base(builtin)
    {
        TryGetVariable = (_, _, variable, out value) => Library.Value.TryGetValue(variable.Name, out value!);
        StrictVariables = true;
        EnableRelaxedMemberAccess = false;
        EnableRelaxedTargetAccess = false;
        // A catalog of any size is a report of any size; templates come with the program and loop only over what they are given.
        LoopLimit = 0;
        LimitToString = 0;
        NewLine = "\n";
    }

    /// <summary>False after a page so large that its room is better given back than kept for the next.</summary>
    public bool IsLight => Output is StringBuilderOutput { Builder.Capacity: <= Roomy };

    public override TemplateContext Write(SourceSpan span, object? textAsObject)
    {
        if (textAsObject is not null)
            Write(textAsObject is SafeHtml safe ? safe.ToString() : Encode(ObjectToString(textAsObject) ?? ""));
        return this;
    }

    /// <summary>Encoded, with what stands between backticks set as code. A backtick without a partner stays.</summary>
    internal static SafeHtml Prose(string? text)
    {
        var parts = Encode(text ?? "").Split('`');
        var html = new StringBuilder(parts[0]);
        for (var i = 1; i < parts.Length; i += 2)
            html.Append(i + 1 < parts.Length ? $"<code>{parts[i]}</code>{parts[i + 1]}" : $"`{parts[i]}");
        return new SafeHtml(html.ToString());
    }

    internal static string Encode(string text)
    {
        if (!text.AsSpan().ContainsAny(Special))
            return text;
        var html = new StringBuilder(text.Length + 16);
        foreach (var letter in text)
        {
            _ = letter switch
            {
                '&' => html.Append("&amp;"),
                '<' => html.Append("&lt;"),
                '>' => html.Append("&gt;"),
                '"' => html.Append("&quot;"),
                '\'' => html.Append("&#39;"),
                '\n' or '\t' => html.Append(letter),
                _ when char.IsControl(letter) => html.Append('\uFFFD'),
                _ => html.Append(letter),
            };
        }
        return html.ToString();
    }
}
