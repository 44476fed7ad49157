using System.Collections.Concurrent;
using FitCheck.Reports.Format;
using FitCheck.Reports.Markup;
using Scriban;
using Scriban.Runtime;
using Scriban.Syntax;

namespace FitCheck.Reports.Html;

/// <summary>
/// The templates of a folder, each parsed once; several threads may render. A template shows `it`, a part of it with `part "finding" f`,
/// and a sentence with words of a file in it with `prose it.message`.
/// </summary>
internal sealed class HtmlTemplates
{
    private readonly IReadOnlyList<string> _directories;
    private readonly ConcurrentDictionary<string, Template> _parsed = new(StringComparer.Ordinal);
    // A template within a template takes another one; so there are as many as are at work at once, and they keep their room.
    private readonly ConcurrentBag<HtmlContext> _idle = [];
    private readonly ScriptObject _builtin;

    /// <param name="directories">Where they lie; a template of an earlier folder comes before one of the same name.</param>
    public HtmlTemplates(params IReadOnlyList<string> directories)
    {
        _directories = directories;
        // Called by their types: by reflection each call takes ten times as long.
        _builtin = new ScriptObject(StringComparer.Ordinal)
        {
            ["part"] = DelegateCustomFunction.CreateFunc<string, object, SafeHtml>(Render),
            ["prose"] = DelegateCustomFunction.CreateFunc<string?, SafeHtml>(HtmlContext.Prose),
        };
    }

    /// <exception cref="TemplateException">A template can't be read, or asks for what it is not given.</exception>
    public SafeHtml Render(string name, object model)
    {
        var context = _idle.TryTake(out var idle) ? idle : new HtmlContext(_builtin);
        context.PushGlobal(new ScriptObject(StringComparer.Ordinal) { ["it"] = model });
        try
        {
            var html = new SafeHtml(Parsed(name).Render(context));
            context.PopGlobal();
            if (context.IsLight)
                _idle.Add(context);
            return html;
        }
        catch (ScriptRuntimeException e) when (e.InnerException is TemplateException inner)
        {
            throw new TemplateException(inner.Message, e);
        }
        catch (ScriptRuntimeException e)
        {
            // Scriban's message begins with the file, the line and the column.
            throw new TemplateException($"{e.Message}. Correct the template, or restore the one that comes with the program.", e);
        }
    }

    /// <summary>The style sheet, which stands inside a style element and so must not be able to end it.</summary>
    public SafeHtml Style() => new(Read("style.css").Replace("</", "<\\/", StringComparison.Ordinal));

    /// <summary>What stands in a page's head for the style sheet: all of it, or where it is to be fetched.</summary>
    /// <param name="address">Null for all of it.</param>
    public SafeHtml Styled(string? address) => address is null ? new($"<style>\n{Style()}\n</style>")
        : new($"""<link rel="icon" href="data:,"><link rel="stylesheet" href="{HtmlContext.Encode(address)}">""");

    /// <summary>A script of the folder, which stands inside a script element and so must not be able to end it.</summary>
    public SafeHtml Script(string name) => new(Read(Path.GetFileName(name) + ".js").Replace("</", "<\\/", StringComparison.Ordinal));

    private Template Parsed(string name)
    {
        if (_parsed.TryGetValue(name, out var known))
            return known;
        var file = Path.GetFileName(name) + ".html";
        var template = Template.Parse(Read(file), PathOf(file));
        if (template.HasErrors)
            throw new TemplateException($"{template.Messages[0]}. Correct the template, or restore the one that comes with the program.");
        return _parsed.GetOrAdd(name, template);
    }

    private string PathOf(string file) =>
        _directories.Select(d => Path.Combine(d, file)).FirstOrDefault(File.Exists) ?? Path.Combine(_directories[0], file);

    private string Read(string file)
    {
        var path = PathOf(file);
        try
        {
            return File.ReadAllText(path).ReplaceLineEndings("\n");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new TemplateException(
                $"The template {path} can't be read. Restore the folder {Path.GetDirectoryName(path)} that comes with the program.",
                e);
        }
    }
}
