using System.Text;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;

namespace FitCheck.QuoteImport;

/// <summary>Takes a CSV text apart (RFC 4180, with comma, semicolon or tab), each cell with its line and column.</summary>
internal static class CsvText
{
    /// <summary>The rows that hold anything. A quotation mark that is never closed is told.</summary>
    public static IReadOnlyList<IReadOnlyList<Located<string>>> Rows(SourceText source, ProblemList problems)
    {
        var separator = Separator(source.Text);
        var rows = new List<IReadOnlyList<Located<string>>>();
        var row = new List<Located<string>>();
        var cell = new StringBuilder();
        int line = 1, column = 1;
        var (start, quoted, wasQuoted) = (new Location(source.File, 1, 1), false, false);
        for (var i = 0; i < source.Text.Length; i++, column++)
        {
            var letter = source.Text[i];
            if (quoted && letter == '"')
            {
                if (i + 1 < source.Text.Length && source.Text[i + 1] == '"')
                    (i, column) = (i + 1, column + 1);
                else
                    (quoted, letter) = (false, '\0');
                if (letter == '\0')
                    continue;
            }
            else if (!quoted && letter == '"' && cell.ToString().Trim().Length == 0 && !wasQuoted)
            {
                (quoted, wasQuoted) = (true, true);
                cell.Clear();
                continue;
            }
            else if (!quoted && letter == separator)
            {
                EndCell();
                continue;
            }
            else if (!quoted && letter is '\n' or '\r' && !quoted)
            {
                if (letter == '\r' && i + 1 < source.Text.Length && source.Text[i + 1] == '\n')
                    i++;
                EndRow();
                continue;
            }
            if (letter == '\n')
                (line, column) = (line + 1, 0);
            cell.Append(letter);
        }
        if (quoted)
            problems.Error(start, "the quotation mark that begins this cell is never closed");
        EndRow();
        return rows;

        void EndCell()
        {
            row.Add(new Located<string>(cell.ToString().Trim(), start));
            cell.Clear();
            wasQuoted = false;
            start = new Location(source.File, line, column + 1);
        }

        void EndRow()
        {
            EndCell();
            if (row.Exists(c => c.Value.Length > 0))
                rows.Add(row);
            row = [];
            (line, column) = (line + 1, 0);
            start = new Location(source.File, line, 1);
        }
    }

    // What the first lines have most of outside quotation marks; a list of names alone has none.
    private static char Separator(string text)
    {
        char[] known = [';', '\t', ','];
        var counts = new int[known.Length];
        var (quoted, lines) = (false, 0);
        for (var i = 0; i < text.Length && lines < 20; i++)
        {
            quoted ^= text[i] == '"';
            lines += text[i] == '\n' ? 1 : 0;
            if (!quoted && Array.IndexOf(known, text[i]) is >= 0 and var at)
                counts[at]++;
        }
        return known[Array.IndexOf(counts, counts.Max())];
    }
}
