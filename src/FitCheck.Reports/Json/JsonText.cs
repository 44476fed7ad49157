using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using FitCheck.Builds;

namespace FitCheck.Reports.Json;

/// <summary>How every format of JSON is laid out here.</summary>
internal static class JsonText
{
    private static readonly JsonWriterOptions Layout = new()
    {
        Indented = true,
        NewLine = "\n",
        // Readable: JSON is not HTML, and nobody should paste it there unescaped.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static void Write(Action<Utf8JsonWriter> write, TextWriter output)
    {
        using (var text = new LettersOf(output))
        using (var json = new Utf8JsonWriter(text, Layout))
            write(json);
        output.Write('\n');
    }

    /// <summary>The version of the shape, and which program and catalog speak.</summary>
    public static void WriteOrigin(Utf8JsonWriter json, int shape, string program, string catalogDigest)
    {
        json.WriteNumber("format", shape);
        json.WriteString("program", program);
        json.WriteStartObject("catalog");
        json.WriteString("digest", catalogDigest);
        json.WriteEndObject();
    }

    /// <summary>Of a line of a list: what the seller asks, and what the catalog says where that is not what is counted.</summary>
    public static void WritePrices(Utf8JsonWriter json, ListLine line)
    {
        if (line.QuotePrice is not { } quoted)
            return;
        if (line is { IsQuoted: true, CatalogPrice: { } listed })
            json.WriteNumber("catalog_price", listed.Amount);
        json.WriteNumber("quote_price", quoted.Amount);
        json.WriteString("quote_currency", quoted.Currency);
    }
}
