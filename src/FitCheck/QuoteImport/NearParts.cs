using FitCheck.Catalog;
using FitCheck.Foundation.Problems;

namespace FitCheck.QuoteImport;

/// <summary>
/// Finds parts by what a seller wrote: an id, or a name in any case, spacing and order, with words of its own language beside it. What is
/// near is offered, never taken.
/// </summary>
internal sealed class NearParts
{
    private const int Offered = 3;
    private const double NearEnough = 0.3;

    // Beginnings of words that say in many languages what sort of thing is meant; a name found for another sort is not sure.
    private static readonly (string[] Words, Func<Part, bool> Is)[] Sorts =
    [
        (["komponenten", "kompo", "component", "componenti", "componentes", "composant"], p => p is ComponentSet),
        (["coax", "koax", "coass", "koaks", "wspolosiow"], p => p is Driver { Type: "coaxial" }),
        (["subwoofer", "bassbox"], p => p is not Driver d || d.Type == "subwoofer"),
        (["verstarker", "amplifi", "amplificat", "versterker", "wzmacniacz", "zesilovac", "forstarkare", "forstaerker", "vahvistin",
            "erosito"],
            p => p is Amplifier),
    ];

    private readonly List<Part> _parts;
    private readonly Dictionary<string, Part> _byName = new(StringComparer.Ordinal);
    private readonly HashSet<string> _twice = new(StringComparer.Ordinal);
    private readonly Dictionary<Part, (HashSet<string> All, HashSet<string> OfId)> _tokens = [];
    private readonly HashSet<string> _words = new(StringComparer.Ordinal);

    private readonly ArticleFile _shop;
    private readonly Dictionary<string, Part> _byArticle = new(StringComparer.Ordinal);

    /// <param name="catalog">The parts.</param>
    /// <param name="shop">A shop's own article numbers; null for none.</param>
    public NearParts(PartsCatalog catalog, ArticleFile? shop = null)
    {
        _shop = shop ?? ArticleFile.Empty;
        _parts = [.. catalog.Ids.Select(catalog.Find).OfType<Part>()];
        foreach (var part in _parts)
        {
            _byName[Plain(part.Id)] = part;
            if (!_byName.TryAdd(Plain(part.Name), part) && _byName[Plain(part.Name)] != part)
                _twice.Add(Plain(part.Name));
            foreach (var number in part.Articles)
                _byArticle.TryAdd(ArticleNumbers.Plain(number.Value), part);
            var id = PartTokens.Of(part.Id);
            _tokens[part] = ([.. PartTokens.Of(part.Name), .. id], id);
            _words.UnionWith(_tokens[part].All);
        }
    }

    /// <summary>The part that is meant for certain; null when there is none, or when it may be several.</summary>
    public Part? Find(string text)
    {
        if (_byName.TryGetValue(Plain(text), out var exact))
            return _twice.Contains(Plain(text)) ? null : exact;
        if (_shop.Find(text) is { } known)
            return known;
        if (_byArticle.TryGetValue(ArticleNumbers.Plain(text), out var numbered))
            return numbered;
        // Words that no part has are the seller's own; a figure that none has is of another thing.
        var wanted = PartTokens.Of(text);
        var words = wanted.Where(_words.Contains).ToHashSet(StringComparer.Ordinal);
        if (words.Count < 2 || !words.Any(PartTokens.HasFigure) || wanted.Except(words).Any(PartTokens.HasFigure))
            return null;
        var fitting = _parts.Where(p => words.IsSubsetOf(_tokens[p].All) && IsOfSort(p, wanted))
            .GroupBy(p => _tokens[p].OfId.Count(t => !words.Contains(t))).MinBy(g => g.Key)?.ToList();
        return fitting is [var only] ? only : null;
    }

    /// <summary>Those that may be meant, the nearest first.</summary>
    public IReadOnlyList<Part> Near(string text)
    {
        var (wanted, tokens) = (Pairs(Plain(text)), PartTokens.Of(text));
        // A slip of the pen in an id is nearer than anything that merely sounds alike.
        var slip = Nearest.To(Plain(text), _parts.Select(p => p.Id));
        return [.. _parts.Select(p => (Part: p, Score: p.Id == slip ? 1
                : Math.Max(Alike(wanted, Pairs(Plain(p.Id))), Alike(wanted, Pairs(Plain(p.Name))))))
            .Where(p => p.Score >= NearEnough)
            .OrderByDescending(p => p.Part.Id == slip).ThenByDescending(p => IsOfSort(p.Part, tokens)).ThenByDescending(p => p.Score)
            .ThenBy(p => p.Part.Id, StringComparer.Ordinal).Take(Offered).Select(p => p.Part)];
    }

    /// <summary>"; did you mean `id` (name)?", or nothing.</summary>
    public string Hint(string text) => Near(text).Select(p => $"`{p.Id}` ({p.Name})").ToList() is { Count: > 0 } near
        ? $"; did you mean {string.Join(" or ", near)}?" : "";

    private static bool IsOfSort(Part part, HashSet<string> tokens) => Sorts.All(s => s.Is(part)
        || !tokens.Any(t => s.Words.Any(w => t.StartsWith(w, StringComparison.Ordinal))));

    private static string Plain(string text) =>
        string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).ToLowerInvariant();

    // Pairs of neighbouring letters and digits; words in another order, or one word more, still share most of theirs (Dice 1945).
    private static HashSet<(char, char)> Pairs(string text)
    {
        var letters = text.Where(char.IsLetterOrDigit).ToList();
        return [.. letters.Zip(letters.Skip(1))];
    }

    private static double Alike(HashSet<(char, char)> one, HashSet<(char, char)> other) =>
        one.Count + other.Count == 0 ? 0 : 2.0 * one.Count(other.Contains) / (one.Count + other.Count);
}
