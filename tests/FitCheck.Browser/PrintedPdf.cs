using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;

namespace FitCheck.Browser;

/// <summary>As much of a printed PDF as the tests ask for: its pages, and the straight lines on them in millimetres of paper.</summary>
internal sealed partial class PrintedPdf
{
    private const double MillimetresInPoint = 25.4 / 72;

    private readonly string _text;
    private readonly byte[] _bytes;

    public PrintedPdf(byte[] bytes)
    {
        _bytes = bytes;
        _text = Encoding.Latin1.GetString(bytes);
        Pages = [.. Page().Matches(_text).Select(m => (IReadOnlyList<double>)[.. Lines(Content(m.Groups["contents"].Value))])];
    }

    /// <summary>For each page the lengths of the level lines that are stroked on it.</summary>
    public IReadOnlyList<IReadOnlyList<double>> Pages { get; }

    private string Content(string number)
    {
        var at = Regex.Match(_text, $@"(?<!\d){number} 0 obj\s*<<.*?>>\s*stream\r?\n", RegexOptions.Singleline);
        var start = at.Index + at.Length;
        using var packed = new ZLibStream(new MemoryStream(_bytes, start, _bytes.Length - start), CompressionMode.Decompress);
        using var reader = new StreamReader(packed, Encoding.Latin1);
        return reader.ReadToEnd();
    }

    // PDF 32000-1: `cm` multiplies the matrix, `q` and `Q` keep and restore it, `m` and `l` make a line, `S` strokes it.
    private static IEnumerable<double> Lines(string content)
    {
        var (matrix, kept, numbers, path) = (Matrix.Plain, new Stack<Matrix>(), new List<double>(), new List<(double X, double Y)>());
        foreach (var word in content.Split((char[])[' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries))
        {
            if (double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out var number))
            {
                numbers.Add(number);
                continue;
            }
            if (word == "q")
                kept.Push(matrix);
            else if (word == "Q" && kept.Count > 0)
                matrix = kept.Pop();
            else if (word == "cm" && numbers.Count >= 6)
                matrix = matrix.After([.. numbers[^6..]]);
            else if (word == "m")
                path = [matrix.Of(numbers[^2], numbers[^1])];
            else if (word == "l")
                path.Add(matrix.Of(numbers[^2], numbers[^1]));
            else if (word == "S" && path.Count == 2 && Math.Abs(path[0].Y - path[1].Y) < 0.01)
                yield return Math.Abs(path[1].X - path[0].X) * MillimetresInPoint;
            numbers.Clear();
        }
    }

    [GeneratedRegex(@"/Type /Page\b(?!s).*?/Contents (?<contents>\d+) 0 R", RegexOptions.Singleline)]
    private static partial Regex Page();

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
