using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Rules.Conditions;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Messages;
using FitCheck.Rules.Model;
using FitCheck.Yaml;

namespace FitCheck.Rules.Files;

/// <summary>Reads a rule file. All its problems are told at once, each with line and column.</summary>
internal sealed class RuleReader
{
    private static readonly string[] Keys =
    [
        "id", "title", "subject", "about", "when", "fact", "unit", "warn", "fail", "message", "advice", "why", "source", "caution",
        "asks_for", "waive", "examples",
    ];

    private readonly ProblemList _problems;
    private readonly RuleKeys _keys;
    private readonly YamlMap _root;
    private readonly FactScope _scope;

    private RuleReader(YamlMap root, Func<Subject, FactScope> scopes, ProblemList problems)
    {
        (_root, _problems) = (root, problems);
        _keys = new RuleKeys(root, "a rule", problems, Keys);
        _scope = scopes(SubjectOf());
    }

    /// <summary>The rule, or null when it has a mistake.</summary>
    /// <param name="root">The file's root.</param>
    /// <param name="declared">Every fact that a rule may name, of any subject.</param>
    /// <param name="problems">Where mistakes are told.</param>
    public static Rule? Read(YamlNode root, IReadOnlyList<Fact> declared, ProblemList problems) =>
        Read(root, subject => new FactScope(subject, declared), problems);

    internal static Rule? Read(YamlNode root, Func<Subject, FactScope> scopes, ProblemList problems)
    {
        if (root is not YamlMap map)
        {
            problems.Error(root.At, $"a rule is a mapping that begins with `id:`, found {root.Kind}");
            return null;
        }
        var own = new ProblemList(ProblemKind.BrokenRule);
        var rule = new RuleReader(map, scopes, own).ReadRule();
        problems.AddRange(own.Sorted());
        return own.HasErrors ? null : rule;
    }

    private Rule? ReadRule()
    {
        var id = Id();
        var title = _keys.Text("title");
        var about = _keys.List(_keys.Find("about"), "about").Select(n => _keys.Word(n, "about", AboutWords.All)).OfType<string>()
            .Distinct(StringComparer.Ordinal).ToList();
        var when = _keys.Find("when") is { } condition ? Condition(condition) : null;
        var fact = _keys.Require("fact") is { } node && _keys.Scalar(node, "fact", "an expression") is { } text
            ? Expression.Read(text, _scope, _problems) : null;
        var unit = UnitOf(fact);
        var warn = ThresholdOf("warn", fact);
        var fail = ThresholdOf("fail", fact);
        if (IsNever("warn") && IsNever("fail"))
            _problems.Error(_keys.Find("fail")!.At,
                "a rule that never warns and never fails says nothing; give `warn` or `fail` a threshold");
        var messages = Messages();
        var advice = _keys.Text("advice");
        var why = _keys.Text("why");
        var source = Source();
        var caution = _keys.OptionalText("caution");
        var waive = _keys.Find("waive") is { } waived ? _keys.Word(waived, "waive", ["never"]) : null;
        var asked = _keys.Find("asks_for") is { } part ? AskedPartReader.Read(part, _scope.Subject, _problems) : null;
        var examples = new ExampleReader(_scope, _problems).Read(_keys.List(_keys.Require("examples"), "examples"), fact);
        if (id is null || title is null || fact is null || advice is null || why is null || source is null)
            return null;
        return new Rule
        {
            Id = id,
            At = _root.At,
            Title = title,
            Subject = _scope.Subject,
            About = about,
            When = when,
            Fact = fact,
            Unit = unit,
            Warn = warn,
            Fail = fail,
            Messages = messages,
            Advice = advice,
            Why = why,
            Source = source,
            Caution = caution,
            AsksFor = asked,
            CanBeWaived = waive is null,
            Examples = examples,
            Scope = _scope,
            Written = _root,
        };
    }

    private string? Id()
    {
        if (_keys.Text("id") is not { } id)
            return null;
        if (IsId(id))
            return id;
        _problems.Error(_keys.Find("id")!.At, $"a rule's id is `family/slug` in lower-case letters, digits and hyphens, found `{id}`");
        return null;
    }

    // Words of lower-case letters and digits, joined by hyphens and by one slash: `mount/too-deep`.
    private static bool IsId(string id)
    {
        var slashes = 0;
        for (var i = 0; i < id.Length; i++)
        {
            var joins = id[i] is '-' or '/';
            if (joins ? i == 0 || i == id.Length - 1 || id[i - 1] is '-' or '/'
                : !char.IsAsciiLetterLower(id[i]) && !char.IsAsciiDigit(id[i]))
                return false;
            slashes += id[i] == '/' ? 1 : 0;
        }
        return slashes == 1;
    }

    // Without a subject the names of facts mean nothing; a position is assumed so that the other mistakes are told too.
    private Subject SubjectOf() =>
        _keys.Require("subject") is { } node && _keys.Word(node, "subject", SubjectWords.All) is { } word ? SubjectWords.Parse(word)!.Value
            : Subject.Position;

    private Expression? Condition(YamlNode node)
    {
        if (_keys.Scalar(node, "when", "an expression") is not { } text || Expression.Read(text, _scope, _problems) is not { } condition)
            return null;
        if (condition.Type == FactType.Truth)
            return condition;
        _problems.Error(text.At, $"`when` needs an expression that is true or false; this one is {TypeCheck.Found(condition.Type)}");
        return null;
    }

    private Unit? UnitOf(Expression? fact)
    {
        if (_keys.Find("unit") is not { } node)
        {
            if (fact?.Type is { Kind: FactKind.Number, Dimension: var dimension })
                _problems.Error(_root.At,
                    $"a rule about a number needs the key `unit`; the fact is {TypeCheck.Found(fact.Type)}"
                        + $"{(dimension == Dimension.One ? ", so `unit: 1` or `unit: \"%\"`" : "")}");
            return null;
        }
        if (_keys.Scalar(node, "unit", "a unit") is not { } text)
            return null;
        if (Unit.Find(text.Text) is not { } unit)
        {
            _problems.Error(text.At,
                $"`{text.Text}` is no unit that FitCheck knows{Nearest.Hint(text.Text, Unit.All.Select(u => u.Symbol))}");
            return null;
        }
        if (fact is not null && fact.Type.Kind != FactKind.Number)
            _problems.Error(text.At, $"the fact is {fact.Type} and has no unit; leave `unit` out");
        else if (fact is not null && fact.Type.Dimension != unit.Dimension)
            _problems.Error(text.At, $"the unit `{unit.Symbol}` doesn't fit the fact, which is {TypeCheck.Found(fact.Type)}");
        return unit;
    }

    private bool IsNever(string key) => _keys.Find(key) is YamlScalar { Text: "never" };

    private Threshold? ThresholdOf(string key, Expression? fact) =>
        _keys.Require(key) is { } node && !IsNever(key)
            && _keys.Map(node, key, "a threshold such as `{ below: 3 mm }`, or the word `never`") is { } map
            ? new ThresholdReader(key, fact?.Type, _scope, _problems).Read(map)
            : null;

    private RuleMessages Messages()
    {
        var messages = new RuleMessages();
        if (_keys.Require("message") is not { } node || _keys.Map(node, "message", "a mapping with one message a status") is not { } map)
            return messages;
        var keys = new RuleKeys(map, "`message`", _problems, [.. StatusWords.All]);
        foreach (var status in Rule.Possible(!IsNever("warn"), !IsNever("fail")))
        {
            if (keys.Text(status.Word()) is { } text)
                messages[status] = new MessageTemplate(text, keys.Find(status.Word())!.At);
        }
        foreach (var key in (string[])["warn", "fail"])
        {
            if (IsNever(key) && keys.Find(key) is { } never)
                _problems.Error(never.At, $"the rule says `{key}: never`, so this message is never shown");
        }
        return messages;
    }

    private RuleSource? Source()
    {
        if (_keys.Require("source") is not { } node || _keys.Map(node, "source", "a mapping with `title` and perhaps `url`") is not { } map)
            return null;
        var keys = new RuleKeys(map, "a source", _problems, "title", "url");
        return keys.Text("title") is { } title ? new RuleSource(title, keys.OptionalText("url")) : null;
    }
}
