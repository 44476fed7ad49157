using System.Globalization;
using System.Text;

namespace FitCheck.QuoteImport;

/// <summary>What a column of a seller's list tells.</summary>
internal enum Column
{
    /// <summary>Article number or id.</summary>
    Article,
    /// <summary>The name of the thing.</summary>
    Name,
    /// <summary>How many packs.</summary>
    Quantity,
    /// <summary>What one costs.</summary>
    UnitPrice,
    /// <summary>What the line costs.</summary>
    Total,
    /// <summary>The number of the line, a unit, a discount: nothing that decides what is meant.</summary>
    Other,
}

/// <summary>
/// The words of tills and office programs, in English, German, French, Italian, Spanish, Dutch, Polish, Czech, Swedish, Danish and
/// Norwegian, Portuguese, Finnish and Hungarian: headings, and lines that are no parts. Written without accents, in small letters.
/// </summary>
internal static class QuoteWords
{
    private static readonly (Column Column, string[] Words)[] Headings =
    [
        (Column.Article,
            ["article number", "article no", "article", "item no", "item number", "item code", "part number", "part no", "part",
            "sku", "code", "id", "artikelnummer", "artikelnr", "artikel nr", "art nr", "artikel", "bestellnummer", "reference", "ref",
            "codice", "cod", "codigo", "referencia", "indeks", "symbol", "kod", "katalogove cislo", "varenr", "varenummer", "artnr",
            "tuotenumero", "tuotekoodi", "cikkszam", "kod produktu"]),
        (Column.Name, ["name", "description", "product", "item", "goods", "bezeichnung", "beschreibung", "produkt", "teil", "designation",
            "libelle", "descrizione", "prodotto", "articolo", "descripcion", "producto", "concepto", "articulo", "omschrijving", "nazwa",
            "opis", "nazwa towaru", "nazev", "popis", "benamning", "beskrivning", "beskrivelse", "betegnelse", "vare", "descricao",
            "produto", "artigo", "nimike", "kuvaus", "tuote", "megnevezes", "termek", "leiras"]),
        (Column.Quantity,
            ["packs", "quantity", "qty", "count", "pcs", "number", "units", "menge", "anzahl", "stuck", "stk", "quantite", "qte",
            "quantita", "q ta", "qta", "cantidad", "cant", "uds", "aantal", "ilosc", "mnozstvi", "pocet", "antal", "antall", "quantidade",
            "qtd", "qtde", "maara", "kpl", "mennyiseg", "db"]),
        (Column.UnitPrice, ["unit price", "price", "price each", "each", "einzelpreis", "preis", "stuckpreis", "ep", "p u ht", "p u",
            "pu ht",
            "prix", "prix unitaire", "prezzo", "prezzo unitario", "precio", "precio unitario", "prijs", "stuksprijs", "cena", "cena netto",
            "a pris", "pris", "preco", "preco unitario", "hinta", "egysegar", "ar"]),
        (Column.Total, ["line total", "total", "amount", "sum", "gp", "gesamt", "gesamtpreis", "summe", "betrag", "total ht", "montant",
            "totale", "importo", "importe", "totaal", "bedrag", "wartosc", "wartosc netto", "celkem", "summa", "belopp", "i alt", "belob",
            "sum kr", "valor", "yhteensa", "osszesen"]),
        (Column.Other, ["pos", "position", "no", "nr", "line", "lp", "unit", "net", "gross", "vat", "einheit", "tva", "iva", "j m", "jm",
            "dph", "rabatt", "discount", "remise"]),
    ];

    private static readonly (string Called, string[] Words)[] NoParts =
    [
        ("sums and taxes", ["total", "subtotal", "sub total", "grand total", "amount due", "balance", "vat", "tax", "net total", "sum",
            "gesamt", "gesamtsumme", "gesamtbetrag", "zwischensumme", "summe", "endbetrag", "nettobetrag", "bruttobetrag", "mwst", "ust",
            "total ht", "total ttc", "sous total", "tva", "net a payer", "imponibile", "totale", "iva", "base imponible", "suma", "importe",
            "subtotaal", "totaal", "btw", "te betalen", "razem", "do zaplaty", "celkem", "dph", "moms", "summa", "att betala", "i alt",
            "at betale", "mva", "a pagar", "yhteensa", "alv", "osszesen", "afa", "fizetendo", "incidencia"]),
        ("labour", ["labour", "labor", "fitting", "installation", "install", "montage", "einbau", "arbeitszeit", "arbeit", "lohn",
            "abstimmung", "main d oeuvre", "main d œuvre", "pose", "manodopera", "installazione", "montaggio", "mano de obra",
            "instalacion",
            "arbeid", "inbouw", "robocizna", "montaz", "prace", "arbete", "arbejde", "arbejdstimer", "arbeid", "mao de obra", "instalacao",
            "tyo", "asennus", "munkadij", "beszereles", "workshop hours"]),
        ("shipping", ["shipping", "postage", "delivery", "carriage", "freight", "versand", "versandkosten", "porto", "lieferung",
            "frais de port", "livraison", "port", "spedizione", "trasporto", "gastos de envio", "envio", "portes", "verzendkosten",
            "verzending", "wysylka", "dostawa", "doprava", "postovne", "frakt", "fragt", "toimitus", "rahti", "szallitas"]),
        ("discounts", ["discount", "rebate", "rabatt", "skonto", "nachlass", "remise", "sconto", "descuento", "korting", "rabat", "sleva",
            "desconto", "alennus", "kedvezmeny"]),
    ];

    // Hours are work.
    private static readonly string[] Hours = ["h", "hr", "hrs", "hours", "std", "stunden", "heures", "ore", "horas", "uur", "godz", "hod",
        "tim", "timer", "tuntia", "ora"];

    // How things are counted; packs of a pair are sold as one.
    private static readonly HashSet<string> Units = new(StringComparer.Ordinal)
    {
        "pcs", "pc", "piece", "pieces", "ea", "each", "x", "pack", "packs", "set", "sets", "unit", "units", "stk", "stck", "stuck", "st",
        "packung", "pieces", "u", "pz", "ud", "uds", "un", "stuks", "szt", "kpl", "ks", "bal", "db", "kpl", "paar", "pair", "pairs",
    };

    private static readonly string[] Pieces = ["pcs", "pc", "piece", "pieces", "ea", "each", "stk", "stck", "stuck", "st", "pz", "stuks",
        "szt", "ks", "db"];

    /// <summary>What a cell tells of its column as a heading; null for anything else.</summary>
    public static Column? Heading(string cell)
    {
        var plain = Plain(cell);
        // `Preis in EUR`, `Price (EUR)`.
        var bare = plain.Split(' ') is [.. var words, var last] && words.Length > 0 && PriceText.Meant(last).Count > 0
            ? string.Join(' ', words is [.. var rest, "in"] ? rest : words) : plain;
        foreach (var (column, known) in Headings)
        {
            if (known.Contains(plain, StringComparer.Ordinal) || known.Contains(bare, StringComparer.Ordinal))
                return column;
        }
        return null;
    }

    /// <summary>True for a heading of article numbers.</summary>
    public static bool IsHeadingOfArticles(string cell) => Heading(cell) == Column.Article;

    /// <summary>What a line is that is no part: "labour"; null where nothing says so.</summary>
    public static string? NoPart(string text)
    {
        var plain = Plain(text);
        foreach (var (called, words) in NoParts)
        {
            if (words.Any(w => plain == w || plain.StartsWith(w + " ", StringComparison.Ordinal)
                || (w.Length > 4 && plain.EndsWith(" " + w, StringComparison.Ordinal))))
                return called;
        }
        return null;
    }

    /// <summary>Whether this is an amount of hours: `2,5 Std`.</summary>
    public static bool IsHours(string text) => Plain(text).Split(' ') is [.., var last] parts && parts.Length > 1 && Hours.Contains(last);

    /// <summary>Whether a quantity calls what it counts pieces: `2 Stk`.</summary>
    public static bool ArePieces(string quantity) => Plain(quantity).Split(' ') is [_, var unit]
        && Pieces.Contains(unit, StringComparer.Ordinal);

    /// <summary>Whether a word is how things are counted.</summary>
    public static bool IsUnit(string word) => Units.Contains(Plain(word)) || word == "×";

    // Of the alphabets of these languages; the program carries no tables of Unicode.
    private static readonly Dictionary<char, string> Folded = new (string Plain, string Letters)[]
    {
        ("a", "àáâãäåāă\u0105"), ("ae", "æ"), ("c", "çćč"), ("d", "ďđð"), ("e", "èéêëēėęě"), ("g", "ğ"), ("i", "ìíîïī\u0131"), ("l", "łĺľ"),
        ("n", "ñńň"), ("o", "òóôõöøőō"), ("oe", "œ"), ("r", "řŕ"), ("s", "śšşș"), ("ss", "ß"), ("t", "ťțţ"), ("u", "ùúûüūůű"), ("y", "ýÿ"),
        ("z", "źżž"),
    }.SelectMany(f => f.Letters.Select(letter => (Letter: letter, f.Plain))).ToDictionary(f => f.Letter, f => f.Plain);

    /// <summary>Small letters without accents, what is neither letter nor digit as one space.</summary>
    public static string Plain(string text)
    {
        var plain = new StringBuilder();
        foreach (var letter in text.ToLowerInvariant())
        {
            if (Folded.TryGetValue(letter, out var folded))
                plain.Append(folded);
            else if (char.IsLetterOrDigit(letter))
                plain.Append(letter);
            else if (plain is not { Length: 0 } && plain[^1] != ' ' && CharUnicodeInfo.GetUnicodeCategory(letter)
                != UnicodeCategory.NonSpacingMark)
                plain.Append(' ');
        }
        return plain.ToString().TrimEnd();
    }
}
