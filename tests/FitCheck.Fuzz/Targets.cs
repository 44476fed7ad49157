using System.Text;
using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Facts;
using FitCheck.Facts.Values;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.LintCache;
using FitCheck.Physics.Quantities;
using FitCheck.Rules;
using FitCheck.Rules.Conditions;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Files;
using FitCheck.Rules.Model;
using FitCheck.Schemas;
using FitCheck.Yaml;

namespace FitCheck.Fuzz;

/// <summary>
/// What is fuzzed. Each takes any bytes, and fails by an exception: of the reader, or because an answer has no place in the input.
/// </summary>
internal sealed class Targets
{
    public static readonly string[] Names = ["yaml", "quantity", "expression", "rule", "entry", "build"];

    private const string File = "input.yaml";

    private readonly SchemaCheck _schemas = new();
    private readonly FactScope _scope = new(Subject.Position, FactRegistry.Declarations);
    private readonly PartsCatalog _catalog = PartsCatalog.Open(["catalog"], new ProblemList());
    private readonly RuleSet _rules = RuleSet.Load(["rules"], FactRegistry.Declarations, new ProblemList());

    private readonly EntryJudge _judge;

    public Targets() => _judge = new EntryJudge(_rules);

    public Action<byte[]>? Find(string name) => name switch
    {
        "yaml" => bytes => Yaml(bytes),
        "quantity" => Quantity,
        "expression" => Expressed,
        "rule" => Rule,
        "entry" => Entry,
        "build" => Build,
        _ => null,
    };

    // The quick reader and the library have to agree, wherever the quick one answers at all.
    private static YamlNode? Yaml(byte[] bytes)
    {
        var problems = new ProblemList();
        var root = SourceText.Decode(File, bytes, problems) is { } source ? YamlReader.Read(source, problems) : null;
        Placed(problems, root is not null);
        return root;
    }

    private static void Quantity(byte[] bytes)
    {
        var text = Encoding.UTF8.GetString(bytes);
        if (QuantityText.Parse(text) is { } quantity)
            Hold(double.IsFinite(quantity.Si), "a quantity is a number");
        if (QuantityText.ParseNumber(text) is { } number)
            Hold(double.IsFinite(number), "a number is one");
    }

    private void Expressed(byte[] bytes)
    {
        var problems = new ProblemList();
        var expression = Expression.Read(new YamlScalar(new Location(File, 1, 1), Encoding.UTF8.GetString(bytes), Quoted: false), _scope,
            problems);
        Placed(problems, expression is not null);
        expression?.Evaluate(new FactInputs(_scope, new Dictionary<string, FactValue>(StringComparer.Ordinal)));
    }

    private static void Rule(byte[] bytes)
    {
        if (Yaml(bytes) is not { } root)
            return;
        var problems = new ProblemList();
        var rule = RuleReader.Read(root, FactRegistry.Declarations, problems);
        Placed(problems, rule is not null);
        if (rule is null)
            return;
        RuleExamples.Run(rule);
        RuleChecks.Of(rule);
    }

    private void Entry(byte[] bytes)
    {
        // A folder has entries of one kind.
        var kind = Kinds.All.FirstOrDefault(k => bytes.AsSpan().IndexOf(Encoding.UTF8.GetBytes("kind: " + k.Kind)) >= 0)
            ?? Kinds.All[bytes.Length % Kinds.All.Count];
        foreach (var text in EntryText.Of(kind.Kind, File, bytes))
        {
            var problems = new ProblemList();
            var entry = EntryReader.Read(text, text.WrittenId() ?? "input", _schemas, problems);
            Placed(problems, entry is not null);
            Kept(ExaminedEntry.Of(text.WrittenId() ?? "input", text, _schemas, _judge));
        }
    }

    // What the rules find has a place, and a note says the same when it is read again.
    private static void Kept(ExaminedEntry note)
    {
        var found = new ProblemList();
        found.AddRange(note.Judged);
        Placed(found, answered: true);
        var (classes, to) = (new FigureClasses(), new CacheWriter());
        CachedEntry.Write(to, note, new EntryDigest(1, 2), classes);
        var read = new CachedFile(File, File, "", null, to.TakeAll().ToArray()).All.Single().Open(classes);
        Hold(Told(read) == Told(note), "a note is what was noted");
        Hold(read.Samples.SequenceEqual(note.Samples), "figures are what was noted");
    }

    private static string Told(ExaminedEntry note) => string.Join('\n',
        [note.Id, note.Name, note.Place.ToString(), note.IdAt.ToString(), .. note.Positions,
            .. note.Problems.Concat(note.Judged).Select(p => $"{p} {p.Code} {p.Subject} {string.Join(',', p.Related)}"),
            .. note.References.Select(r => $"{r.Target} {r.Kind} {string.Join(',', r.Positions)}")]);

    private void Build(byte[] bytes)
    {
        if (Yaml(bytes) is not { } root)
            return;
        var problems = new ProblemList();
        _schemas.Check("build", root, problems);
        var build = BuildReader.Read(root, _catalog, problems);
        Placed(problems, build is not null);
        if (build is not null && !problems.HasErrors)
            BuildEvaluation.Judged(build, _rules);
    }

    private static void Placed(ProblemList problems, bool answered)
    {
        Hold(answered || problems.HasErrors, "there is an answer, or a reason");
        foreach (var problem in problems.Sorted())
        {
            Hold(problem.At is { File: File, Line: > 0, Column: > 0 } || problem.Kind == ProblemKind.Unreadable, $"a place: {problem}");
            Hold(problem.Message.Length > 0, "a sentence");
        }
    }

    private static void Hold(bool condition, string what)
    {
        if (!condition)
            throw new InvalidOperationException("does not hold: " + what);
    }
}
