namespace FitCheck.Reports.Svg;

/// <summary>
/// The words of a drawing, whose room is reckoned beforehand because an SVG neither measures nor breaks a line. The style sheet sets them
/// in these sizes, and by `font-size-adjust` in that size of whatever font there is at which its digits are as wide as those of the wide
/// DejaVu Sans: so a line is about as long in any font.
/// </summary>
internal static class Lettering
{
    /// <summary>Of legends and names.</summary>
    public const double Label = 11;

    /// <summary>Of figures, in bold.</summary>
    public const double Figure = 12;

    /// <summary>Of axes.</summary>
    public const double Tick = 10.5;

    // From the space to the tilde, in thousandths of the size: the wider of DejaVu Sans and Liberation Sans, whose digits are 636 and 556
    // wide (their `hmtx` tables).
    private static readonly short[] Widths =
    [
        318, 401, 460, 838, 636, 1017, 780, 275, 390, 390, 500, 838, 318, 381, 318, 337, 636, 636, 636, 636, 636, 636, 636, 636, 636, 636,
        337, 337, 838, 838, 838, 636,
        1161, 763, 763, 826, 826, 763, 699, 890, 826, 318, 572, 763, 636, 953, 826, 890, 763, 890, 826, 763, 699, 826, 763, 1080, 763, 763,
        699, 390, 337, 390, 838, 636,
        500, 636, 636, 572, 636, 636, 352, 636, 636, 278, 278, 579, 278, 974, 636, 636, 636, 636, 411, 572, 392, 636, 592, 826, 592, 592,
        572, 636, 337, 636, 838,
    ];

    /// <summary>In user units.</summary>
    public static double WidthOf(string text, double size, bool bold = false)
    {
        var sum = 0;
        foreach (var letter in text)
            sum += letter is >= ' ' and <= '~' ? Widths[letter - ' '] : char.IsLower(letter) ? 680 : 1144;
        return sum * size / 1000 * (bold ? 1.08 : 1);
    }

    /// <summary>
    /// Broken at spaces; a word that is longer than a line is broken too, since what passes the edge of a drawing is lost.
    /// </summary>
    public static IReadOnlyList<string> Lines(string text, double room, double size, bool bold = false)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && WidthOf($"{line} {word}", size, bold) <= room)
            {
                line += " " + word;
                continue;
            }
            if (line.Length > 0)
                lines.Add(line);
            line = word;
            while (line.Length > 1 && WidthOf(line, size, bold) > room)
            {
                var fits = Fitting(line, room, size, bold);
                lines.Add(line[..fits]);
                line = line[fits..];
            }
        }
        lines.Add(line);
        return lines;
    }

    /// <summary>As much of it as there is room for.</summary>
    public static string Cut(string text, double room, double size, bool bold = false) =>
        WidthOf(text, size, bold) <= room ? text
            : text[..Fitting(text, room - WidthOf("…", size, bold), size, bold)].TrimEnd(' ', ',') + "…";

    /// <summary>On so many lines at most; the last is cut.</summary>
    public static IReadOnlyList<string> Lines(string text, int most, double room, double size, bool bold = false)
    {
        var lines = Lines(text, room, size, bold);
        return lines.Count <= most ? lines : [.. lines.Take(most - 1), Cut(string.Join(' ', lines.Skip(most - 1)), room, size, bold)];
    }

    // At least one letter, and no half of a surrogate pair.
    private static int Fitting(string text, double room, double size, bool bold)
    {
        var fits = 1;
        while (fits < text.Length && WidthOf(text[..(fits + 1)], size, bold) <= room)
            fits++;
        return fits < text.Length && char.IsHighSurrogate(text[fits - 1]) ? Math.Max(fits - 1, Math.Min(2, text.Length)) : fits;
    }
}
