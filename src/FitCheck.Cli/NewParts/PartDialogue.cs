using FitCheck.Catalog;
using FitCheck.Cli.Asking;
using FitCheck.DataSheets;
using FitCheck.Foundation.Problems;
using FitCheck.Schemas;
using FitCheck.Yaml;

namespace FitCheck.Cli.NewParts;

/// <summary>Asks what an entry of a kind needs, key by key, each with its unit and an example; a wrong answer is asked again.</summary>
internal sealed class PartDialogue(string kind, IQuestions ask, PartsCatalog catalog)
{
    private static readonly Location Nowhere = new("answer", 1, 1), Answered = new("answer", 1, 2);

    private readonly SchemaCheck _schemas = new();

    /// <summary>The entry under this id; null for the id asks for it too.</summary>
    public YamlMap Ask(string? id)
    {
        var isOwned = NeededKeys.MayBeOwned(kind) && ask.One("Is it for sale, or is it there already?",
            [new("sold", "it is bought: it has a price and a source"), new("owned", "it is there already: nobody buys it")]).Id == "owned";
        var answers = new List<(KeyPath Path, YamlNode Value)>();
        foreach (var path in NeededKeys.Of(kind, isOwned))
            answers.Add((path, path.Path switch
            {
                "kind" => new YamlScalar(Nowhere, kind, Quoted: false),
                "id" when id is not null => new YamlScalar(Nowhere, id, Quoted: false),
                _ => Ask(path, isOwned),
            }));
        // What the type of thing needs besides.
        var type = (answers.Find(a => a.Path.Path == "type").Value as YamlScalar)?.Text ?? "";
        foreach (var key in kind switch { "sundry" => Sundry.Needed(type), "wiring" => WiringPart.Needed(type), _ => [] })
        {
            var path = KeyPath.Of(kind).First(p => p.Path == key);
            answers.Add((path, Ask(path, isOwned)));
        }
        if (isOwned)
            answers.Add((KeyPath.Of(kind).First(p => p.Path == "owned"), new YamlScalar(Nowhere, "true", Quoted: false)));
        return EntryTree.Of(kind, answers, Nowhere);
    }

    private YamlNode Ask(KeyPath path, bool isOwned)
    {
        var answer = ask.Text($"{path.Path}: {SchemaExamples.Meaning(_schemas.Schema(kind), path.Keys)}", Usual(path, isOwned),
            text => Wrong(path, text));
        return Read(path, answer, new ProblemList())!;
    }

    private static string Usual(KeyPath path, bool isOwned) => path.Path switch
    {
        "provenance" => isOwned ? "measured" : "datasheet",
        "availability" => "current",
        _ => "",
    };

    private string? Wrong(KeyPath path, string text)
    {
        if (text.Length == 0)
            return "it is needed";
        var problems = new ProblemList();
        if (Read(path, text, problems) is { } value && !problems.HasErrors)
            _schemas.Check(kind, EntryTree.Of(kind, [(path, value)], Nowhere), problems);
        return problems.All.FirstOrDefault(p => p.At == Answered)?.Message ?? WrongReference(path, text);
    }

    // A set is made of drivers that have entries of their own.
    private string? WrongReference(KeyPath path, string text)
    {
        if (kind != "component-set" || path.Path is not ("woofer" or "tweeter") || catalog.Find(text) is Driver { Type: var type }
            && type == path.Path)
            return null;
        var known = catalog.IdsOf("driver").Where(d => catalog.Find(d) is Driver driver && driver.Type == path.Path);
        return $"no {path.Path} `{text}` in the catalog{Nearest.Hint(text, known)}; write its own entry first";
    }

    private static YamlNode? Read(KeyPath path, string text, ProblemList problems) =>
        TableCell.Read(new Located<string>(Listed(path, text), Answered), new TableHeading(path, ""), problems);

    // `front-door-left, front-door-right` are the ids of places; a list of mappings may be written out as well.
    private static string Listed(KeyPath path, string text) =>
        text[0] is not ('[' or '{') && path.Item?.Alternatives[0].Schema["required"] is System.Text.Json.Nodes.JsonArray { Count: 1 } only
            ? $"[{string.Join(", ", text.Split([',', ' '], StringSplitOptions.RemoveEmptyEntries).Select(w => $"{{{only[0]}: {w}}}"))}]"
                : text;
}
