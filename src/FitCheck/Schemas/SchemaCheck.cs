using System.Collections.Concurrent;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Yaml;
using Newtonsoft.Json.Linq;
using NJsonSchema;
using NJsonSchema.Validation;

namespace FitCheck.Schemas;

/// <summary>Holds a YAML document against the JSON Schema of its kind and tells every violation with its place.</summary>
internal sealed class SchemaCheck
{
    private readonly ConcurrentDictionary<string, SchemaMatcher> _shapes = new(StringComparer.Ordinal);
    private readonly Dictionary<string, JsonSchema> _schemas = new(StringComparer.Ordinal);
    private readonly Lock _telling = new();

    /// <summary>
    /// Adds a problem for each violation. The kind must be one of <see cref="SchemaText.Kinds"/>. Several threads may ask at once.
    /// </summary>
    public void Check(string kind, YamlNode root, ProblemList problems)
    {
        if (Shape(kind).Holds(root))
            return;
        if (QuickProgram.IsThis)
            throw new HandOverException();
        lock (_telling)
            Tell(kind, root, problems);
    }

    /// <summary>Adds a problem for each violation that the schema library finds, which says what is wrong; one thread at a time.</summary>
    internal void Tell(string kind, YamlNode root, ProblemList problems)
    {
        using var reader = new YamlTokenReader(root);
        var token = JToken.Load(reader, new JsonLoadSettings { LineInfoHandling = LineInfoHandling.Load });
        var nodes = Index(root);
        var errors = Leaves(Schema(kind).Validate(token), nodes, root).ToList();
        var wrong = errors.Where(e => !IsMissing(e)).Select(e => (Error: e, At: At(e, root))).OrderBy(e => e.At).ToList();
        foreach (var (error, at) in wrong.Take(ProblemList.MostOfOneFile))
            problems.Error(at, SchemaMessages.For(error, nodes.GetValueOrDefault(at)), ProblemKind.WrongShape);
        if (wrong.Count > ProblemList.MostOfOneFile)
            problems.Add(Problem.More(wrong[ProblemList.MostOfOneFile].At, wrong.Count - ProblemList.MostOfOneFile));
        // Of several problems at one place only the first is told: all keys that are missing there are one.
        foreach (var missing in errors.Where(IsMissing).GroupBy(e => At(e, root)))
            problems.Error(missing.Key, SchemaMessages.Missing([.. missing.DistinctBy(e => e.Property, StringComparer.Ordinal)]),
                ProblemKind.WrongShape);
    }

    private static bool IsMissing(ValidationError error) => error.Kind == ValidationErrorKind.PropertyRequired;

    private SchemaMatcher Shape(string kind) => _shapes.GetOrAdd(kind, NewShape);

    private static SchemaMatcher NewShape(string kind)
    {
        var (own, shared) = SchemaText.Files(kind) ?? throw new ArgumentException($"no schema for `{kind}`", nameof(kind));
        return SchemaMatcher.Of(own, shared);
    }

    /// <summary>The schema of a kind as the library reads it; one thread at a time.</summary>
    internal JsonSchema Schema(string kind)
    {
        if (_schemas.TryGetValue(kind, out var known))
            return known;
        var text = SchemaText.Of(kind) ?? throw new ArgumentException($"no schema for `{kind}`", nameof(kind));
        return _schemas[kind] = JsonSchema.FromJsonAsync(text).GetAwaiter().GetResult();
    }

    // A nested error says "one of these failed"; what a person can mend is the innermost one.
    private static IEnumerable<ValidationError> Leaves(IEnumerable<ValidationError> errors, Dictionary<Location, YamlNode> nodes,
        YamlNode root)
    {
        foreach (var error in errors)
        {
            var inner = error switch
            {
                ChildSchemaValidationError { Kind: ValidationErrorKind.NotAnyOf } any =>
                    Meant(any.Errors.Where(e => Takes(e.Key, nodes.GetValueOrDefault(At(error, root))))).SelectMany(e => e.Value),
                ChildSchemaValidationError child => child.Errors.SelectMany(e => e.Value),
                MultiTypeValidationError multi => multi.Errors.SelectMany(e => e.Value),
                _ => null,
            };
            if (inner is null || !inner.Any())
                yield return error;
            else
                foreach (var leaf in Leaves(inner, nodes, root))
                    yield return leaf;
        }
    }

    // Of several alternatives the one is meant that takes a mapping where one was found, or a list; a word is held against all of them.
    private static bool Takes(JsonSchema alternative, YamlNode? found) =>
        found is YamlMap ? alternative.ActualSchema.Type == JsonObjectType.Object
            : found is YamlList && alternative.ActualSchema.Type == JsonObjectType.Array;

    // Where several take it, the usual one stands last.
    private static IEnumerable<T> Meant<T>(IEnumerable<T> taking) => taking.TakeLast(1);

    private static Location At(ValidationError error, YamlNode root) =>
        new(root.At.File, Math.Max(1, error.LineNumber), Math.Max(1, error.LinePosition));

    private static Dictionary<Location, YamlNode> Index(YamlNode root)
    {
        var nodes = new Dictionary<Location, YamlNode>();
        Visit(root);
        return nodes;

        void Visit(YamlNode node)
        {
            nodes.TryAdd(node.At, node);
            if (node is YamlMap map)
                foreach (var entry in map.Entries)
                    Visit(entry.Value);
            else if (node is YamlList list)
                foreach (var item in list.Items)
                    Visit(item);
        }
    }
}
