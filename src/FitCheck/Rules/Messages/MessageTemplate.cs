using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using Scriban;
using Scriban.Runtime;
using Scriban.Syntax;

namespace FitCheck.Rules.Messages;

/// <summary>
/// A message with places to fill in. It is parsed when the template engine is first needed for it, because loading that costs more than
/// reading a hundred rules. It has variables and nothing else: what may stand in it is named in <see cref="MessageGrammar"/>, and its
/// length has a bound, so that it ends after as many steps as it has words.
/// </summary>
internal sealed class MessageTemplate(string text, Location at)
{
    /// <summary>Longest template and longest message.</summary>
    public const int MaxLength = 4000;

    private readonly Lock _parsing = new();
    private object? _parsed;

    /// <summary>As it is written.</summary>
    public string Text => text;

    public Location At => at;

    /// <summary>The message, or null when the template is wrong; <paramref name="problem"/> says how.</summary>
    public string? Render(Func<string, string?> variable, out string? problem)
    {
        problem = null;
        var message = (text.Length <= MaxLength ? PlainMessage.Fill(text, variable) : null) ?? RenderByEngine(variable, out problem);
        return message is null ? null : string.Join(' ', message.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }

    /// <summary>The message by the template engine, whatever the places hold.</summary>
    internal string? RenderByEngine(Func<string, string?> variable, out string? problem)
    {
        if (QuickProgram.IsThis)
            throw new HandOverException();
        var template = Parsed();
        problem = template.HasErrors ? template.Messages[0].Message : MessageGrammar.Of(template.Page!, text).Refused;
        if (problem is not null)
            return null;
        try
        {
            var message = template.Render(Context(variable));
            if (message.Length >= MaxLength)
                problem = $"it grows longer than {MaxLength} characters";
            return problem is null ? message : null;
        }
        catch (Exception e) when (e is ScriptRuntimeException or InvalidOperationException or ArgumentException)
        {
            problem = e is ScriptRuntimeException { OriginalMessage: { } original } ? original : e.Message;
            return null;
        }
    }

    /// <summary>Reports a template that can't be parsed or that names a variable which is none of these.</summary>
    public void Check(IReadOnlyCollection<string> variables, ProblemList problems)
    {
        var template = Parsed();
        if (template.HasErrors)
        {
            problems.Error(at, "the message can't be parsed: " + template.Messages[0].Message, ProblemKind.BrokenRule);
            return;
        }
        var read = MessageGrammar.Of(template.Page!, text);
        if (read.Refused is { } refused)
        {
            problems.Error(at, refused, ProblemKind.BrokenRule);
            return;
        }
        foreach (var name in read.Read.Except(read.Written, StringComparer.Ordinal).Except(variables, StringComparer.Ordinal))
            problems.Error(at,
                $"the message names `{name}`, which is neither a fact of this subject nor a word of messages"
                    + $"{Nearest.Hint(name, variables)}", ProblemKind.BrokenRule);
    }

    private Template Parsed()
    {
        lock (_parsing)
            return (Template)(_parsed ??= Template.Parse(text.Length <= MaxLength ? text : "{{ the message is too long"));
    }

    private static TemplateContext Context(Func<string, string?> variable) =>
        new(new ScriptObject(StringComparer.Ordinal), StringComparer.Ordinal)
        {
            StrictVariables = true,
            LoopLimit = 100,
            LoopLimitQueryable = 100,
            RecursiveLimit = 10,
            ObjectRecursionLimit = 10,
            LimitToString = MaxLength,
            OutputLimit = MaxLength,
            RegexTimeOut = TimeSpan.FromMilliseconds(100),
            TryGetVariable = (_, _, name, out value) => (value = variable(name.Name)) is not null,
        };
}
