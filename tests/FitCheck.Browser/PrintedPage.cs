using System.Globalization;

namespace FitCheck.Browser;

/// <summary>A letter on paper, or the first of several that are shown at once, in millimetres from the left and from the foot, with the size of its font in points and its colour as the file writes it.</summary>
internal readonly record struct PrintedLetter(double X, double Y, double Size, string Colour);

/// <summary>
/// One page of a printed PDF. PDF 32000-1: `cm` multiplies the matrix, `q` and `Q` keep and restore it; `m` and `l` make a line, `S` strokes it; `Tm` and `Td` place
/// what `Tj` shows, in the size that `Tf` says; `rg` colours it; and what stands between `/Artifact … BDC` and its `EMC` is the browser's, not the page's.
/// </summary>
internal sealed class PrintedPage
{
    private const double MillimetresInPoint = 25.4 / 72;

    private readonly List<double> _lines = [];
    private readonly List<PrintedLetter> _letters = [];

    public PrintedPage(string content)
    {
        var (matrix, place, colour, kept, marked) = (Matrix.Plain, Matrix.Plain, "", new Stack<(Matrix, string)>(), new Stack<bool>());
        var (numbers, path, artifact, size, shown) = (new List<double>(), new List<(double X, double Y)>(), false, 0.0, 0);
        foreach (var word in content.Split((char[])[' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries))
        {
            if (double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out var number))
            {
                numbers.Add(number);
                continue;
            }
            switch (word)
            {
                case "q":
                    kept.Push((matrix, colour));
                    break;
                case "Q" when kept.Count > 0:
                    (matrix, colour) = kept.Pop();
                    break;
                case "cm" when numbers.Count >= 6:
                    matrix = matrix.After([.. numbers[^6..]]);
                    break;
                case "m":
                    path = [matrix.Of(numbers[^2], numbers[^1])];
                    break;
                case "l":
                    path.Add(matrix.Of(numbers[^2], numbers[^1]));
                    break;
                case "S" when path.Count == 2 && Math.Abs(path[0].Y - path[1].Y) < 0.01:
                    _lines.Add(Math.Abs(path[1].X - path[0].X) * MillimetresInPoint);
                    break;
                case "rg" when numbers.Count >= 3:
                    colour = string.Join(' ', numbers[^3..].Select(n => n.ToString("0.##", CultureInfo.InvariantCulture)));
                    break;
                case "/Artifact":
                    artifact = true;
                    continue;
                case "BMC" or "BDC" or ">>BDC":
                    marked.Push(artifact);
                    artifact = false;
                    break;
                case "EMC" when marked.Count > 0:
                    marked.Pop();
                    break;
                case "Tf" when numbers.Count > 0:
                    size = numbers[^1];
                    break;
                case "Tm" when numbers.Count >= 6:
                    place = Matrix.Plain.After([.. numbers[^6..]]);
                    break;
                case "Td" when numbers.Count >= 2:
                    place = place.After([1, 0, 0, 1, numbers[^2], numbers[^1]]);
                    break;
                case "Tj" or "TJ" when !marked.Contains(true):
                    var (x, y) = Of(0, 0);
                    var (overX, overY) = Of(0, 1);
                    var letter = new PrintedLetter(x * MillimetresInPoint, y * MillimetresInPoint, size * Math.Sqrt(Math.Pow(overX - x, 2) + Math.Pow(overY - y, 2)), colour);
                    _letters.AddRange(Enumerable.Repeat(letter, shown));
                    break;
                default:
                    // four hexadecimal digits a letter
                    if (word[0] == '<')
                        shown = Math.Max(1, (word.Length - 2) / 4);
                    if (word[0] is '<' or '/' or '(' or '>')
                        continue;
                    break;
            }
            numbers.Clear();
        }

        (double X, double Y) Of(double x, double y)
        {
            var (inX, inY) = place.Of(x, y);
            return matrix.Of(inX, inY);
        }
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
