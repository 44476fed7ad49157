using FitCheck.Catalog;
using FitCheck.Foundation.Problems;

namespace FitCheck.QuoteImport;

/// <summary>Finds parts by what a seller wrote: an id, or a name in any case and spacing. What is near is offered, never taken.</summary>
internal sealed class NearParts
{
    private const int Offered = 3;
    private const double NearEnough = 0.3;

    private readonly List<Part> _parts;
    private readonly Dictionary<string, Part> _byName = new(StringComparer.Ordinal);
    private readonly HashSet<string> _twice = new(StringComparer.Ordinal);

    public NearParts(PartsCatalog catalog)
    {
        _parts = [.. catalog.Ids.Select(catalog.Find).OfType<Part>()];
        foreach (var part in _parts)
        {
            _byName[Plain(part.Id)] = part;
            if (!_byName.TryAdd(Plain(part.Name), part) && _byName[Plain(part.Name)] != part)
                _twice.Add(Plain(part.Name));
        }
    }

    /// <summary>The part that is meant; null when there is none, or when the name is that of two parts.</summary>
    public Part? Find(string text) => _twice.Contains(Plain(text)) ? null : _byName.GetValueOrDefault(Plain(text));

    /// <summary>"; did you mean `id` (name)?", or nothing.</summary>
    public string Hint(string text)
    {
        var wanted = Pairs(Plain(text));
        // A slip of the pen in an id is nearer than anything that merely sounds alike.
        var slip = Nearest.To(Plain(text), _parts.Select(p => p.Id));
        var near = _parts.Select(
            p => (Part: p, Score: p.Id == slip ? 1 : Math.Max(Alike(wanted, Pairs(Plain(p.Id))), Alike(wanted, Pairs(Plain(p.Name))))))
            .Where(p => p.Score >= NearEnough).OrderByDescending(p => p.Score).ThenBy(p => p.Part.Id, StringComparer.Ordinal).Take(Offered)
            .Select(p => $"`{p.Part.Id}` ({p.Part.Name})").ToList();
        return near.Count == 0 ? "" : $"; did you mean {string.Join(" or ", near)}?";
    }

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
