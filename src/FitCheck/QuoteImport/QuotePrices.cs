using System.Globalization;
using FitCheck.Catalog;
using FitCheck.Foundation.Problems;

namespace FitCheck.QuoteImport;

/// <summary>
/// What a seller's list says that a pack costs. Points and commas, and the currency, are decided for the whole list; what stays open, or
/// can't be meant so, is told and not taken.
/// </summary>
internal sealed class QuotePrices
{
    // A price without a currency that is so many times the catalog's, or a fraction, is in another one, or of something else.
    private const decimal Far = 3;

    private readonly QuoteColumns _columns;
    private readonly bool? _hasPoint;
    private readonly string _currency;
    private readonly List<(int Line, string Text)> _open = [], _far = [], _foreign = [];
    private readonly HashSet<string> _foreignSigns = new(StringComparer.Ordinal);

    public QuotePrices(IReadOnlyList<IReadOnlyList<Located<string>>> rows, QuoteColumns columns)
    {
        _columns = columns;
        var prices = rows.Skip(columns.First).SelectMany(r => new[] { Cell(r, columns.Unit), Cell(r, columns.Total) })
            .OfType<PriceText>().ToList();
        var (points, commas) = (prices.Exists(p => p.WithComma is null), prices.Exists(p => p.WithPoint is null));
        _hasPoint = points == commas ? null : points;
        var signs = prices.Select(p => p.Currency)
            .Concat(columns.First > 0 ? rows[columns.First - 1].Select(c => PriceText.CurrencyIn(c.Value)) : [])
            .Where(c => c.Length > 0).Distinct(StringComparer.Ordinal).ToList();
        _currency = signs is [var only] ? only : "";
    }

    /// <summary>
    /// How many packs are meant, and what one costs as the list has it. A price that is that of a piece, by the catalog's, makes packs of
    /// the
    /// pieces.
    /// </summary>
    public (int Packs, Money? Price) Of(IReadOnlyList<Located<string>> row, Part part, int count, bool arePieces, ProblemList problems)
    {
        var (unit, total) = (Cell(row, _columns.Unit), Cell(row, _columns.Total));
        if (unit is null && total is null)
            return (count, null);
        var line = row[0].At.Line;
        var listed = part.HasPrice && part.Price.Value.Amount > 0 ? part.Price.Value : null;
        var each = Each(unit, total, count, listed);
        if (each is not { } one || one <= 0)
        {
            _open.Add((line, row[unit is null ? _columns.Total : _columns.Unit].Value));
            return (count, null);
        }
        var sign = new[] { unit?.Currency, total?.Currency, _currency }.FirstOrDefault(s => s is { Length: > 0 }) ?? "";
        var meant = PriceText.Meant(sign);
        if (sign.Length > 0 && listed is not null && !meant.Contains(listed.Currency))
        {
            _foreign.Add((line, Shown(one)));
            _foreignSigns.Add(meant is [var known] ? known : sign);
            return (count, meant is [var code] ? new Money(Rounded(one), code) : null);
        }
        var currency = listed?.Currency ?? (meant.Count > 0 ? meant[0] : null);
        if (currency is null)
            return (count, null);
        var packs = listed is null ? count : Packs(part, count, arePieces, one, listed.Amount, row[0].At, problems);
        var price = packs == count ? one : one * part.Pack;
        if (sign.Length == 0 && listed is not null && (price > Far * listed.Amount || price * Far < listed.Amount))
        {
            _far.Add((line, $"{Shown(price)} against {listed}"));
            return (packs, null);
        }
        return (packs, new Money(Rounded(price), currency));
    }

    /// <summary>Tells what was not taken, a sentence for each reason.</summary>
    public void Tell(string file, ProblemList problems)
    {
        var at = new Location(file, 0, 0);
        if (_open.Count > 0)
            problems.Warn(at, $"nothing decides what these prices are, so the catalog's are counted: {Listed(_open)}; write them with "
                + "hundredths, such as `59.00`");
        if (_far.Count > 0)
            problems.Warn(at, $"no currency is written, and these prices are far from the catalog's, which are counted: {Listed(_far)}; "
                + "write the currency into the heading, such as `Price (EUR)`, or `price:` into the build");
        if (_foreign.Count > 0)
            problems.Warn(at, $"prices in {string.Join(" and ", _foreignSigns.Order(StringComparer.Ordinal))} are not compared with the "
                + $"catalog's, which are counted: {Listed(_foreign)}");
    }

    // A total that is not so many times the price has a discount in it: it is what is paid.
    private decimal? Each(PriceText? unit, PriceText? total, int count, Money? listed)
    {
        var (one, all) = (Value(unit, listed), Value(total, listed is null ? null : listed with { Amount = listed.Amount * count }));
        return all is { } sum && sum > 0 && (one is not { } price || Math.Abs((price * count) - sum) > 0.01m * count) ? sum / count : one;
    }

    private decimal? Value(PriceText? price, Money? listed)
    {
        if (price is not { IsOpen: true })
            return price?.WithPoint ?? price?.WithComma;
        if (_hasPoint is { } point)
            return point ? price.WithPoint : price.WithComma;
        // One of the two is near what the catalog says, and the other one can't be.
        var near = listed is null ? [] : new[] { price.WithPoint!.Value, price.WithComma!.Value }
            .Where(v => v <= Far * listed.Amount && v * Far >= listed.Amount).ToList();
        return near is [var only] ? only : null;
    }

    // Where the price of one is that of a piece, pieces may have been counted: they are where the list calls them so.
    private static int Packs(Part part, int count, bool arePieces, decimal one, decimal listed, Location at, ProblemList problems)
    {
        var (asPack, asPiece) = (one / listed, one * part.Pack / listed);
        if (part.Pack == 1 || asPiece is < 0.67m or > 1.5m || Distance(asPiece) >= Distance(asPack))
            return count;
        if (arePieces && count % part.Pack == 0)
        {
            problems.Warn(at, $"{part.Name}: {Shown(one)} is about the price of a piece, so the {count} pieces are taken for "
                + $"{count / part.Pack} {(count == part.Pack ? "pack" : "packs")} of {part.Pack}");
            return count / part.Pack;
        }
        problems.Warn(at, $"{part.Name} is sold in packs of {part.Pack}, and {Shown(one)} is about the price of a piece; {count} "
            + $"{(count == 1 ? "is" : "are")} taken for packs: where pieces are meant, write how many packs they are");
        return count;

        static decimal Distance(decimal ratio) => ratio > 1 ? ratio : 1 / ratio;
    }

    private static PriceText? Cell(IReadOnlyList<Located<string>> row, int column) =>
        column >= 0 && column < row.Count ? PriceText.Of(row[column].Value) : null;

    private static decimal Rounded(decimal amount) => decimal.Round(amount, 2, MidpointRounding.AwayFromZero);

    private static string Shown(decimal amount) => amount.ToString("0.00", CultureInfo.InvariantCulture);

    private static string Listed(List<(int Line, string Text)> lines) =>
        string.Join(", ", lines.Select(l => $"line {l.Line} ({l.Text})"));
}
