using System.Globalization;
using System.Text;
using FitCheck.Foundation.Problems;

namespace FitCheck.Foundation;

/// <summary>
/// Characters that nobody sees and that change what is seen: those that turn the direction of writing, and those that have no shape. A name
/// with one looks like another name, and a line in a review like another line.
/// </summary>
internal static class HiddenLetters
{
    /// <summary>
    /// True for what Unicode calls default ignorable (which holds all of Bidi_Control), for its line and paragraph separators, and for the
    /// marks of annotations. DerivedCoreProperties.txt of the Unicode Character Database; the blocks that it keeps free are taken whole.
    /// </summary>
    public static bool Has(int letter) => letter switch
    {
        < 0xAD => false,
        0xAD or 0x34F or 0x61C or 0x115F or 0x1160 or 0x17B4 or 0x17B5 or 0x3164 or 0xFEFF or 0xFFA0 => true,
        >= 0x180B and <= 0x180F => true,
        (>= 0x200B and <= 0x200F) or (>= 0x2028 and <= 0x202E) or (>= 0x2060 and <= 0x206F) => true,
        (>= 0xFE00 and <= 0xFE0F) or (>= 0xFFF0 and <= 0xFFFB) => true,
        (>= 0x1BCA0 and <= 0x1BCA3) or (>= 0x1D173 and <= 0x1D17A) or (>= 0xE0000 and <= 0xE0FFF) => true,
        _ => false,
    };

    /// <summary>The letter's number, as Unicode writes it.</summary>
    public static string Number(int letter) => string.Create(CultureInfo.InvariantCulture, $"U+{letter:X4}");

    /// <summary>A text in which each of them is its number, in braces.</summary>
    public static string Shown(string text)
    {
        if (Ascii.IsValid(text))
            return text;
        var shown = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length; i++)
        {
            var isPair = i + 1 < text.Length && char.IsSurrogatePair(text[i], text[i + 1]);
            var letter = isPair ? char.ConvertToUtf32(text[i], text[i + 1]) : text[i];
            if (Has(letter))
                shown.Append('{').Append(Number(letter)).Append('}');
            else
                shown.Append(text, i, isPair ? 2 : 1);
            i += isPair ? 1 : 0;
        }
        return shown.ToString();
    }

    /// <summary>Tells the first that stands in a text, and how many more there are.</summary>
    /// <param name="file">What the text is called.</param>
    /// <param name="firstLine">The line in which it begins.</param>
    /// <param name="utf8">The text. A byte-order mark at the beginning of a file is none of them.</param>
    /// <param name="problems">Where it is told.</param>
    public static void Tell(string file, int firstLine, ReadOnlySpan<byte> utf8, ProblemList problems)
    {
        if (utf8.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
            utf8 = utf8[3..];
        if (Ascii.IsValid(utf8))
            return;
        var (line, column, count) = (firstLine, 1, 0);
        Location? at = null;
        var first = 0;
        while (Rune.DecodeFromUtf8(utf8, out var rune, out var length) is var status && length > 0)
        {
            if (status == System.Buffers.OperationStatus.Done && Has(rune.Value) && count++ == 0)
                (at, first) = (new Location(file, line, column), rune.Value);
            (line, column) = rune.Value == '\n' ? (line + 1, 1) : (line, column + rune.Utf16SequenceLength);
            utf8 = utf8[length..];
        }
        if (at is not null)
            problems.Warn(at, $"{Number(first)} stands here, a character that nobody sees; leave it out"
                + (count == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $" ({count - 1} more in this text)")),
                ProblemKind.HiddenLetter);
    }
}
