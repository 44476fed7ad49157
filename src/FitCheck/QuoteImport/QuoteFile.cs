using System.Text;
using ExcelDataReader;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;

namespace FitCheck.QuoteImport;

/// <summary>A seller's list as rows of cells, as tills and office programs write it: text in any of their codes, or a workbook.</summary>
/// <param name="File">As it is reported.</param>
/// <param name="Rows">The rows that hold anything, each cell with its line and column; of a workbook the row and the number of the
/// cell.</param>
internal sealed record QuoteFile(string File, IReadOnlyList<IReadOnlyList<Located<string>>> Rows)
{
    private static readonly UTF8Encoding Utf8 = new(false, throwOnInvalidBytes: true);

    // Windows-1252, which the reader of workbooks asks for too.
    static QuoteFile() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);

    /// <summary>The rows of a file with these bytes; null where it can't be read, and told.</summary>
    public static QuoteFile? Read(string file, byte[] bytes, ProblemList problems)
    {
        if (bytes.Length > SourceText.MaxBytes)
        {
            problems.Error(new Location(file, 0, 0), $"the file has {bytes.Length} bytes; a list may have up to {SourceText.MaxBytes}",
                ProblemKind.Unreadable);
            return null;
        }
        if (bytes.AsSpan().StartsWith("PK"u8))
            return Workbook(file, bytes, problems) is { } rows ? new QuoteFile(file, rows) : null;
        if (Decoded(bytes) is { } text)
            return new QuoteFile(file, CsvText.Rows(new SourceText(file, text), problems));
        problems.Error(new Location(file, 0, 0), "the file is neither text nor a workbook (.xlsx)", ProblemKind.Unreadable);
        return null;
    }

    /// <summary>
    /// The text of a file. What is no UTF-8 is what western office programs wrote before it; a NUL stands in neither, and makes it null.
    /// </summary>
    internal static string? Decoded(byte[] bytes)
    {
        var span = bytes.AsSpan();
        if (span.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]))
            return Encoding.Unicode.GetString(span[2..]);
        if (span.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
            return Encoding.BigEndianUnicode.GetString(span[2..]);
        if (span.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
            span = span[3..];
        if (span.Contains((byte)0))
            return null;
        try
        {
            return Utf8.GetString(span);
        }
        catch (DecoderFallbackException)
        {
            return Encoding.GetEncoding(1252).GetString(span);
        }
    }

    // The first sheet on which anything stands.
    private static List<IReadOnlyList<Located<string>>>? Workbook(string file, byte[] bytes, ProblemList problems)
    {
        try
        {
            using var stream = new MemoryStream(bytes);
            using var reader = ExcelReaderFactory.CreateOpenXmlReader(stream);
            do
            {
                if (Sheet(file, reader) is { Count: > 0 } rows)
                    return rows;
            }
            while (reader.NextResult());
            return [];
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            problems.Error(new Location(file, 0, 0), "the file begins like a workbook (.xlsx), but can't be read as one; save it again, or "
                + "as CSV", ProblemKind.Unreadable);
            return null;
        }
    }

    private static List<IReadOnlyList<Located<string>>> Sheet(string file, IExcelDataReader reader)
    {
        var rows = new List<IReadOnlyList<Located<string>>>();
        for (var line = 1; reader.Read(); line++)
        {
            var cells = Enumerable.Range(0, reader.FieldCount)
                .Select(i => new Located<string>(Cell(reader.GetValue(i)), new Location(file, line, i + 1))).ToList();
            if (cells.Exists(c => c.Value.Length > 0))
                rows.Add(cells);
        }
        return rows;
    }

    private static string Cell(object? value) =>
        value is null ? "" : Convert.ToString(value, System.Globalization.CultureInfo.InvariantCulture)!.Trim();
}
