using System.CommandLine;
using System.Globalization;
using FitCheck.Catalog;
using FitCheck.Cli.Output;
using FitCheck.Evaluation;
using FitCheck.Finds;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Reports.Wording;
using FitCheck.Yaml;

namespace FitCheck.Cli.Commands;

/// <summary>`fitcheck find WORDS`</summary>
internal static class FindCommand
{
    public static Command Create()
    {
        var words = new Argument<string[]>("WORDS")
        {
            HelpName = "WORDS",
            Description = "Words of the id, name, type or size, or of the vehicle that it fits; the beginning of a word is enough",
            Arity = ArgumentArity.OneOrMore
        };
        var kind = new Option<string?>("--kind")
        {
            Description = "Only this kind: `driver`, `adapter`, `vehicle`, `place`, `rule`, …",
            HelpName = "KIND"
        };
        var most = new Option<decimal?>("--price-to") { Description = "Only parts of up to this price a pack", HelpName = "AMOUNT" };
        var common = new CommonOptions();
        var command = new Command("find", "Find parts, vehicles, places and rules by words; one alone is shown whole")
        {
            words, kind, most, common.Catalog, common.Rules,
        };
        command.SetAction(parsed =>
        {
            string[] kinds = [.. Kinds.All.Select(k => k.Kind), "place", "rule"];
            if (parsed.GetValue(kind) is { } asked && KindWords.Wrong(asked, kinds) is { } wrong)
                return Refusal.Usage(wrong).Tell();
            var problems = new ProblemList();
            if (ValidInputs.Open(common.Folders(parsed), ValidationCache.InUserFolder(), problems) is not { } valid)
                return ProblemLines.Tell(problems.Sorted(), Console.Error);
            var wanted = parsed.GetValue(words)!;
            var found = Things.Found(wanted, parsed.GetValue(kind), parsed.GetValue(most), valid.Catalog, valid.Rules);
            if (found.Count == 0)
                return Refusal.Input($"nothing has all of these words: {string.Join(' ', wanted)}").Tell();
            if (found.Count == 1 || (wanted.Length == 1 && found[0].Id == wanted[0]))
                Whole(found[0], valid.Catalog);
            else
                Lines(found);
            return ExitStatus.Good;
        });
        return command;
    }

    private static void Lines(IReadOnlyList<Thing> found)
    {
        var (ids, kinds) = (found.Max(t => t.Id.Length), found.Max(t => t.Kind.Length));
        var prices = found.Max(t => Price(t).Length);
        foreach (var thing in found)
            Console.Out.WriteLine(PlainText.Line(
                $"{thing.Id.PadRight(ids)}  {thing.Kind.PadRight(kinds)}  {Price(thing).PadLeft(prices)}  {thing.Name}"));
        Console.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{found.Count} found"));
    }

    // A part with all that is written of it; of a rule `explain` says more.
    private static void Whole(Thing thing, PartsCatalog catalog)
    {
        Console.Out.WriteLine(PlainText.Line($"{thing.Id}  {thing.Kind}  {Price(thing)}  {thing.Name}"));
        Console.Out.WriteLine(PlainText.Line($"stands in {thing.File}"));
        if (thing.Kind == "rule")
            Console.Out.WriteLine($"`fitcheck explain {thing.Id}` tells what it asks, and why.");
        else if (catalog.Find(thing.Id) is Part && catalog.Written(thing.Id) is YamlMap written)
        {
            foreach (var (key, value) in Written(written, ""))
                Console.Out.WriteLine(PlainText.Line($"  {key}: {value}"));
        }
    }

    // `dimensions.flange: 165 mm`, each datum on a line.
    private static IEnumerable<(string Key, string Value)> Written(YamlMap map, string above)
    {
        foreach (var entry in map.Entries)
        {
            var key = above + entry.Key;
            if (entry.Value is YamlMap inner)
            {
                foreach (var line in Written(inner, key + "."))
                    yield return line;
            }
            else
                yield return (key, Flow(entry.Value));
        }
    }

    private static string Flow(YamlNode node) => node switch
    {
        YamlScalar scalar => scalar.Text,
        YamlList list => $"[{string.Join(", ", list.Items.Select(Flow))}]",
        YamlMap map => $"{{{string.Join(", ", map.Entries.Select(e => $"{e.Key}: {Flow(e.Value)}"))}}}",
        _ => "",
    };

    private static string Price(Thing thing) => thing.Price?.ToString() ?? "";
}
