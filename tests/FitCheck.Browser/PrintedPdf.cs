using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;

namespace FitCheck.Browser;

/// <summary>
/// As much of a printed PDF as the tests ask for: its fonts, and of each page the straight lines and the places of its words.
/// </summary>
internal sealed partial class PrintedPdf
{
    private readonly string _text;
    private readonly byte[] _bytes;

    public PrintedPdf(byte[] bytes)
    {
        _bytes = bytes;
        _text = Encoding.Latin1.GetString(bytes);
        Pages = [.. Page().Matches(_text).Select(m => new PrintedPage(Content(m.Groups["contents"].Value)))];
        Fonts = [.. Font().Matches(_text).Select(m => m.Groups["name"].Value).Distinct(StringComparer.Ordinal)];
    }

    public IReadOnlyList<PrintedPage> Pages { get; }

    /// <summary>The names of the fonts that it carries, `DejaVuSans-Bold`.</summary>
    public IReadOnlyList<string> Fonts { get; }

    private string Content(string number)
    {
        var at = Regex.Match(_text, $@"(?<!\d){number} 0 obj\s*<<.*?>>\s*stream\r?\n", RegexOptions.Singleline);
        var start = at.Index + at.Length;
        using var packed = new ZLibStream(new MemoryStream(_bytes, start, _bytes.Length - start), CompressionMode.Decompress);
        using var reader = new StreamReader(packed, Encoding.Latin1);
        return reader.ReadToEnd();
    }

    [GeneratedRegex(@"/Type /Page\b(?!s).*?/Contents (?<contents>\d+) 0 R", RegexOptions.Singleline)]
    private static partial Regex Page();

    // What stands before the plus tells which letters of the font are in the file.
    [GeneratedRegex(@"/BaseFont /(?:[A-Z]{6}\+)?(?<name>[\w-]+)")]
    private static partial Regex Font();
}
