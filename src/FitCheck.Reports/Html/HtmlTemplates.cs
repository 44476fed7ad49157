using Scriban;
using Scriban.Runtime;

namespace FitCheck.Reports.Html;

/// <summary>The templates of one folder, each parsed once. A template shows `it`, and shows a part of it with `part "finding" f`.</summary>
internal sealed class HtmlTemplates
{
    private readonly string _directory;
    private readonly Dictionary<string, Template> _parsed = new(StringComparer.Ordinal);
    private readonly ScriptObject _builtin;

    public HtmlTemplates(string directory)
    {
        _directory = directory;
        _builtin = TemplateContext.GetDefaultBuiltinObject();
        _builtin.Import("part", new Func<string, object, SafeHtml>(Render));
    }

    public SafeHtml Render(string name, object model)
    {
        var context = new HtmlContext(_builtin);
        context.PushGlobal(new ScriptObject(StringComparer.Ordinal) { ["it"] = model });
        return new SafeHtml(Parsed(name).Render(context));
    }

    /// <summary>The style sheet, which stands inside a style element and so must not be able to end it.</summary>
    public SafeHtml Style()
    {
        var css = File.ReadAllText(Path.Combine(_directory, "style.css")).ReplaceLineEndings("\n");
        return new SafeHtml(css.Replace("</", "<\\/", StringComparison.Ordinal));
    }

    private Template Parsed(string name)
    {
        if (_parsed.TryGetValue(name, out var known))
            return known;
        var path = Path.Combine(_directory, Path.GetFileName(name) + ".html");
        var template = Template.Parse(File.ReadAllText(path).ReplaceLineEndings("\n"), path);
        if (template.HasErrors)
            throw new InvalidDataException(string.Join('\n', template.Messages));
        _parsed.Add(name, template);
        return template;
    }
}
