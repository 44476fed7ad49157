using FitCheck.Catalog;
using FitCheck.Foundation.Problems;
using FitCheck.QuoteImport;
using FitCheck.Reports.Wording;

namespace FitCheck.Cli.Asking;

/// <summary>
/// Asks which parts the lines of a seller's list are of which nobody can be sure, and where a part goes: one question each.
/// </summary>
internal static class QuoteDialogue
{
    private static readonly Choice None = new("", "none of the catalog: leave the line out");
    private static readonly Choice Nowhere = new("", "nowhere yet: it stays on the quote only");
    private static readonly Choice Other = new("another part", "I know its id");

    /// <summary>What the caller knew, and what was answered.</summary>
    public static ImportOptions Answered(IQuestions ask, IReadOnlyList<OpenLine> open, PartsCatalog catalog, ImportOptions options)
    {
        List<string> known = [.. options.As];
        List<int> left = [.. options.Skip];
        foreach (var line in open)
        {
            var id = ask.One($"Line {Figures.Whole(line.Line)} of the list: which part is `{line.Text}`?",
                [.. line.Near.Select(Offered), Other, None]).Id;
            if (id == Other.Id)
                id = ask.Text("Its id in the catalog? Leave it empty when there is none.", "", text => Wrong(text, catalog));
            if (id.Length == 0)
                left.Add(line.Line);
            else
                known.Add($"{Figures.Whole(line.Line)}={id}");
        }
        return options with { As = known, Skip = left };
    }

    /// <summary>What the caller knew, and where each part goes that could go to several places.</summary>
    public static ImportOptions Placed(IQuestions ask, IReadOnlyList<OpenPlace> open, ImportOptions options)
    {
        List<string> known = [.. options.At];
        foreach (var (item, places) in open)
        {
            var count = $"{Figures.Whole(item.Packs)} {(item.Packs == 1 ? "pack" : "packs")}"
                + $"{(item.Part.Pack > 1 ? $" of {Figures.Whole(item.Part.Pack)}" : "")}";
            var ids = ask.One($"{item.Part.Name}, {count}: where does it go?",
                [.. places.Select(p => new Choice(p.Ids, Names.Joined(p.Places.Select(x => x.Position.Name)), ShowsId: false)),
                    Nowhere]).Id;
            if (ids.Length > 0)
                known.Add($"{item.Part.Id}={ids}");
        }
        return options with { At = known };
    }

    private static Choice Offered(Part part)
    {
        var price = part.HasPrice ? part.Price.Value.ToString() : "no price";
        return new(part.Id, $"{part.Name}, {price}{(part.Pack > 1 ? $" for {Figures.Whole(part.Pack)}" : "")}");
    }

    private static string? Wrong(string text, PartsCatalog catalog) => text.Length == 0 || catalog.Find(text) is Part ? null
        : $"no part `{text}` in the catalog{Nearest.Hint(text, catalog.Ids)}";
}
