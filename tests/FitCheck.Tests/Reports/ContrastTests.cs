using System.Globalization;
using System.Text.RegularExpressions;
using Xunit;

namespace FitCheck.Tests.Reports;

/// <summary>
/// Contrast ratios of the page's palettes as WCAG 2.2 defines them: at least 4.5 for text (1.4.3) and 3 for graphics (1.4.11).
/// </summary>
public class ContrastTests
{
    private static readonly string Css = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "reports", "html", "style.css"));

    // Text and what it stands on; the words of a drawing stand on the sheet, or on a halo of it.
    private static readonly (string Front, string[] Backs)[] Texts =
    [
        ("ink", ["ground", "sheet"]),
        ("soft", ["ground", "sheet"]),
        ("accent", ["ground", "sheet"]),
        ("fail", ["ground", "sheet", "fail-tint"]),
        ("measure", ["ground", "sheet", "measure-tint"]),
        ("warn", ["ground", "sheet", "warn-tint"]),
        ("pass", ["ground", "sheet", "pass-tint"]),
    ];

    // Lines and marks that carry a meaning, and what they cross.
    private static readonly (string Front, string[] Backs)[] Graphics =
    [
        ("ink", ["body", "flange", "glass"]),
        ("soft", ["body"]),
        ("fail", ["body"]),
        ("good", ["sheet"]),
        ("sheet", ["fail", "measure", "warn", "pass"]),
    ];

    // Tell nothing by themselves: frames, grids, and the fill of what has an outline.
    private static readonly string[] Quiet = ["rule", "grid"];

    [Theory]
    [MemberData(nameof(Modes))]
    public void Text_stands_out_from_its_ground(string mode) => Assert.Equal([], Faint(mode, Texts, 4.5));

    [Theory]
    [MemberData(nameof(Modes))]
    public void Marks_stand_out_from_what_they_cross(string mode) => Assert.Equal([], Faint(mode, Graphics, 3));

    [Theory]
    [MemberData(nameof(Modes))]
    public void No_colour_escapes_the_reckoning(string mode)
    {
        var reckoned = Texts.Concat(Graphics).SelectMany(p => p.Backs.Append(p.Front)).Concat(Quiet);
        Assert.Equal(reckoned.Distinct().Order(StringComparer.Ordinal), Palette(mode).Keys.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Colours_are_named_in_the_palettes_only()
    {
        var rest = Regex.Replace(Css, @"--[a-z-]+:\s*#[0-9a-f]+", "", RegexOptions.IgnoreCase);
        Assert.DoesNotMatch(@"#[0-9a-fA-F]{3,8}\b|\b(rgb|hsl)a?\(", rest);
    }

    // 21 and 4.54: the examples of WCAG's understanding document (black on white, #767676 on white).
    [Theory]
    [InlineData("#000", "#fff", 21)]
    [InlineData("#767676", "#ffffff", 4.54)]
    public void The_ratio_is_as_published(string front, string back, double ratio) => Assert.Equal(ratio, Ratio(front, back), 2);

    public static TheoryData<string> Modes() => ["light", "dark", "print"];

    private static List<string> Faint(string mode, (string Front, string[] Backs)[] pairs, double least)
    {
        var palette = Palette(mode);
        return [.. from pair in pairs
                   from back in pair.Backs
                   let ratio = Ratio(palette[pair.Front], palette[back])
                   where ratio < least
                   select string.Create(CultureInfo.InvariantCulture, $"{pair.Front} on {back}: {ratio:0.00}")];
    }

    // Light is the first block; each other mode changes what it names.
    private static Dictionary<string, string> Palette(string mode)
    {
        var start = mode switch
        {
            "dark" => Css.IndexOf("prefers-color-scheme: dark", StringComparison.Ordinal),
            "print" =>
            Css.IndexOf("@media print", StringComparison.Ordinal),
            _ => 0
        };
        Assert.True(start >= 0);
        var palette = mode == "light" ? new Dictionary<string, string>(StringComparer.Ordinal) : Palette("light");
        var block = Css[Css.IndexOf(":root", start, StringComparison.Ordinal)..];
        foreach (Match colour in Regex.Matches(block[..block.IndexOf('}', StringComparison.Ordinal)],
            @"--([a-z-]+):\s*(#[0-9a-fA-F]{3,6})"))
            palette[colour.Groups[1].Value] = colour.Groups[2].Value;
        return palette;
    }

    private static double Ratio(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    // Relative luminance of sRGB: https://www.w3.org/TR/WCAG22/#dfn-relative-luminance
    private static double Luminance(string colour)
    {
        var hex = colour.Length == 4 ? string.Concat(colour.Skip(1).Select(c => $"{c}{c}")) : colour[1..];
        return (0.2126 * Linear(hex[..2])) + (0.7152 * Linear(hex[2..4])) + (0.0722 * Linear(hex[4..]));
    }

    private static double Linear(string channel)
    {
        var c = int.Parse(channel, NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
    }
}
