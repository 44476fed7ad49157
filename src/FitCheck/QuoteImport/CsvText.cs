using System.Text;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;

namespace FitCheck.QuoteImport;

/// <summary>Takes a CSV text apart (RFC 4180, with comma, semicolon or tab), each cell with its line and column.</summary>
internal sealed class CsvText
{
    private const int MostLooked = 60;

    private readonly SourceText _source;
    private readonly char _separator;
    private readonly List<IReadOnlyList<Located<string>>> _rows = [];
    private readonly StringBuilder _cell = new();
    private List<Located<string>> _row = [];
    private Location _start;
    private int _at;
    private int _line = 1;
    private int _column = 1;
    private bool _isQuoted;
    private bool _wasQuoted;

    private CsvText(SourceText source) => (_source, _separator, _start) = (source, Separator(source.Text), new Location(source.File, 1, 1));

    /// <summary>The rows that hold anything. A quotation mark that is never closed is told.</summary>
    public static IReadOnlyList<IReadOnlyList<Located<string>>> Rows(SourceText source, ProblemList problems) =>
        new CsvText(source).Read(problems);

    private List<IReadOnlyList<Located<string>>> Read(ProblemList problems)
    {
        for (; _at < _source.Text.Length; _at++, _column++)
        {
            if (_isQuoted)
                TakeQuoted(_source.Text[_at]);
            else
                TakePlain(_source.Text[_at]);
        }
        if (_isQuoted)
            problems.Error(_start, "the quotation mark that begins this cell is never closed");
        EndRow();
        return _rows;
    }

    private void TakePlain(char letter)
    {
        if (letter == '"' && !_wasQuoted && _cell.ToString().Trim().Length == 0)
        {
            (_isQuoted, _wasQuoted) = (true, true);
            _cell.Clear();
        }
        else if (letter == _separator)
        {
            EndCell();
        }
        else if (letter is '\n' or '\r')
        {
            if (letter == '\r' && IsNext('\n'))
                _at++;
            EndRow();
        }
        else
        {
            _cell.Append(letter);
        }
    }

    // A mark that is written twice stands for itself; one alone ends the quotation.
    private void TakeQuoted(char letter)
    {
        if (letter == '"' && !IsNext('"'))
        {
            _isQuoted = false;
            return;
        }
        if (letter == '"')
            (_at, _column) = (_at + 1, _column + 1);
        else if (letter == '\n')
            (_line, _column) = (_line + 1, 0);
        _cell.Append(letter);
    }

    private bool IsNext(char letter) => _at + 1 < _source.Text.Length && _source.Text[_at + 1] == letter;

    private void EndCell()
    {
        _row.Add(new Located<string>(_cell.ToString().Trim(), _start));
        _cell.Clear();
        _wasQuoted = false;
        _start = new Location(_source.File, _line, _column + 1);
    }

    private void EndRow()
    {
        EndCell();
        // `sep=;` tells office programs the separator.
        if (_row.Exists(c => c.Value.Length > 0) && !(_line == 1 && _row[0].Value.StartsWith("sep=", StringComparison.OrdinalIgnoreCase)))
            _rows.Add(_row);
        _row = [];
        (_line, _column) = (_line + 1, 0);
        _start = new Location(_source.File, _line, 1);
    }

    // What the first lines have most of outside quotation marks, if at least half of those that hold anything have it: a list of names
    // alone has none.
    private static char Separator(string text)
    {
        if (text.StartsWith("sep=", StringComparison.OrdinalIgnoreCase) && text.Length > 4)
            return text[4];
        char[] known = [';', '\t', ','];
        var (counts, having, inLine) = (new int[known.Length], new int[known.Length], new int[known.Length]);
        var (quoted, lines, filled) = (false, 0, false);
        for (var i = 0; i <= text.Length && lines < MostLooked; i++)
        {
            if (i == text.Length || (text[i] is '\n' or '\r' && !quoted))
            {
                lines += filled ? 1 : 0;
                for (var k = 0; k < known.Length; k++)
                    (counts[k], having[k], inLine[k]) = (counts[k] + inLine[k], having[k] + (inLine[k] > 0 ? 1 : 0), 0);
                filled = false;
                continue;
            }
            quoted ^= text[i] == '"';
            filled |= !char.IsWhiteSpace(text[i]);
            if (!quoted && Array.IndexOf(known, text[i]) is >= 0 and var at)
                inLine[at]++;
        }
        var most = Array.IndexOf(counts, counts.Max());
        return 2 * having[most] >= lines ? known[most] : '\0';
    }
}
