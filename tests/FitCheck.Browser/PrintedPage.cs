using System.Globalization;

namespace FitCheck.Browser;

/// <summary>
/// A letter on paper, or the first of several that are shown at once, in millimetres from the left and from the foot, with the size of its
/// font in points and its colour as the file writes it.
/// </summary>
internal readonly record struct PrintedLetter(double X, double Y, double Size, string Colour);

/// <summary>
/// One page of a printed PDF. PDF 32000-1: `cm` multiplies the matrix, `q` and `Q` keep and restore it; `m` and `l` make a line, `S`
/// strokes it; `Tm` and `Td` place what `Tj` shows, in the size that `Tf` says; `rg` colours it; and what stands between `/Artifact … BDC`
/// and its `EMC` is the browser's, not the page's.
/// </summary>
internal sealed class PrintedPage
{
    private const double MillimetresInPoint = 25.4 / 72;

    private readonly List<double> _lines = [];
    private readonly List<PrintedLetter> _letters = [];

    // What the numbers before an operator are, and what earlier operators have set.
    private readonly List<double> _numbers = [];
    private readonly Stack<(Matrix Matrix, string Colour)> _kept = new();
    private readonly Stack<bool> _marked = new();
    private List<(double X, double Y)> _path = [];
    private Matrix _matrix = Matrix.Plain;
    private Matrix _place = Matrix.Plain;
    private string _colour = "";
    private bool _isArtifact;
    private double _size;
    private int _shown;

    public PrintedPage(string content)
    {
        foreach (var word in content.Split((char[])[' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries))
            Take(word);
    }

    private void Take(string word)
    {
        if (double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out var number))
            _numbers.Add(number);
        else if (word == "/Artifact")
            _isArtifact = true;
        else if (word[0] == '<')
            // four hexadecimal digits a letter
            _shown = Math.Max(1, (word.Length - 2) / 4);
        else if (word[0] is not ('/' or '(' or '>') || word == ">>BDC")
            Operate(word);
    }

    private void Operate(string word)
    {
        Draw(word);
        Mark(word);
        Write(word);
        _numbers.Clear();
    }

    private void Draw(string word)
    {
        switch (word)
        {
            case "q":
                _kept.Push((_matrix, _colour));
                break;
            case "Q" when _kept.Count > 0:
                (_matrix, _colour) = _kept.Pop();
                break;
            case "cm" when _numbers.Count >= 6:
                _matrix = _matrix.After([.. _numbers[^6..]]);
                break;
            case "m":
                _path = [_matrix.Of(_numbers[^2], _numbers[^1])];
                break;
            case "l":
                _path.Add(_matrix.Of(_numbers[^2], _numbers[^1]));
                break;
            case "S" when _path.Count == 2 && Math.Abs(_path[0].Y - _path[1].Y) < 0.01:
                _lines.Add(Math.Abs(_path[1].X - _path[0].X) * MillimetresInPoint);
                break;
            case "rg" when _numbers.Count >= 3:
                _colour = string.Join(' ', _numbers[^3..].Select(n => n.ToString("0.##", CultureInfo.InvariantCulture)));
                break;
        }
    }

    private void Mark(string word)
    {
        if (word is "BMC" or "BDC" or ">>BDC")
        {
            _marked.Push(_isArtifact);
            _isArtifact = false;
        }
        else if (word == "EMC" && _marked.Count > 0)
        {
            _marked.Pop();
        }
    }

    private void Write(string word)
    {
        switch (word)
        {
            case "Tf" when _numbers.Count > 0:
                _size = _numbers[^1];
                break;
            case "Tm" when _numbers.Count >= 6:
                _place = Matrix.Plain.After([.. _numbers[^6..]]);
                break;
            case "Td" when _numbers.Count >= 2:
                _place = _place.After([1, 0, 0, 1, _numbers[^2], _numbers[^1]]);
                break;
            case "Tj" or "TJ" when !_marked.Contains(true):
                var (x, y) = OnPage(0, 0);
                var (overX, overY) = OnPage(0, 1);
                var letter = new PrintedLetter(x * MillimetresInPoint, y * MillimetresInPoint,
                    _size * Math.Sqrt(Math.Pow(overX - x, 2) + Math.Pow(overY - y, 2)), _colour);
                _letters.AddRange(Enumerable.Repeat(letter, _shown));
                break;
        }
    }

    private (double X, double Y) OnPage(double x, double y)
    {
        var (inX, inY) = _place.Of(x, y);
        return _matrix.Of(inX, inY);
    }

    /// <summary>The lengths of the level lines that are stroked on it, in millimetres.</summary>
    public IReadOnlyList<double> Lines => _lines;

    /// <summary>The letters of the page itself, without the lines that the browser prints above and below it.</summary>
    public IReadOnlyList<PrintedLetter> Letters => _letters;

    private readonly record struct Matrix(double A, double B, double C, double D, double E, double F)
    {
        public static readonly Matrix Plain = new(1, 0, 0, 1, 0, 0);

        public (double X, double Y) Of(double x, double y) => ((A * x) + (C * y) + E, (B * x) + (D * y) + F);

        public Matrix After(double[] m)
        {
            var (x, y, o) = (Of(m[0], m[1]), Of(m[2], m[3]), Of(m[4], m[5]));
            return new(x.X - E, x.Y - F, y.X - E, y.Y - F, o.X, o.Y);
        }
    }
}
