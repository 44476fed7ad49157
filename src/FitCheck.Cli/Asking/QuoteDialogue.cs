using FitCheck.Catalog;
using FitCheck.Foundation.Problems;
using FitCheck.QuoteImport;
using FitCheck.Reports.Wording;

namespace FitCheck.Cli.Asking;

/// <summary>Asks which parts the lines of a seller's list are of which nobody can be sure: one question each.</summary>
internal static class QuoteDialogue
{
    private static readonly Choice None = new("", "none of the catalog: leave the line out");
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

    private static Choice Offered(Part part)
    {
        var price = part.HasPrice ? part.Price.Value.ToString() : "no price";
        return new(part.Id, $"{part.Name}, {price}{(part.Pack > 1 ? $" for {Figures.Whole(part.Pack)}" : "")}");
    }

    private static string? Wrong(string text, PartsCatalog catalog) => text.Length == 0 || catalog.Find(text) is Part ? null
        : $"no part `{text}` in the catalog{Nearest.Hint(text, catalog.Ids)}";
}
