using System.Globalization;
using System.Text;
using FitCheck.Foundation;

namespace FitCheck.Reports.Format;

/// <summary>
/// What is told, on its way out. Names come from whoever sends a change, and the reader may be the log of a build server: what would be a
/// command to one, `::word::` at the beginning of a line or `##word[` anywhere, is broken, and a character that nobody sees becomes its
/// number. Formats that can write a letter as its number say the same as before.
/// </summary>
/// <param name="to">Where it goes.</param>
/// <param name="format">The word after `--format`.</param>
/// <param name="leaveOpen">True to leave open where it goes.</param>
internal sealed class ShownText(TextWriter to, string format, bool leaveOpen = false) : TextWriter(CultureInfo.InvariantCulture)
{
    private readonly Escapes _escapes = format switch
    {
        "json" or "sarif" => Escapes.Json,
        "html" or "junit" or "sheet" => Escapes.Markup,
        _ => Escapes.None,
    };

    // Each of its lines is a command of ours, with all else escaped in it.
    private readonly bool _mayCommand = format == "github";
    private bool _begins = true;
    private bool _colon;
    private int _hashes;
    private char _high;

    private enum Escapes
    {
        None,
        Json,
        Markup,
    }

    public override Encoding Encoding => to.Encoding;

    /// <summary>Tells something by a writer that stays open. What has gone through before may go through again.</summary>
    public static void Tell(TextWriter to, string format, Action<TextWriter> write)
    {
        using var shown = new ShownText(to, format, leaveOpen: true) { NewLine = to.NewLine };
        write(shown);
    }

    public override void Write(char value) => Write([value]);

    public override void Write(char[] buffer, int index, int count) => Write(buffer.AsSpan(index, count));

    public override void Write(string? value) => Write(value.AsSpan());

    public override void Write(ReadOnlySpan<char> buffer)
    {
        var changed = new StringBuilder();
        var kept = 0;
        for (var i = 0; i < buffer.Length; i++)
        {
            if (Shown(buffer[i]) is not { } shown)
                continue;
            changed.Append(buffer[kept..i]).Append(shown);
            kept = i + 1;
        }
        if (kept == 0)
            to.Write(buffer);
        else
            to.Write(changed.Append(buffer[kept..]).ToString());
    }

    public override void Flush() => to.Flush();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            if (_high != 0)
                to.Write(_high);
            if (!leaveOpen)
                to.Dispose();
        }
        base.Dispose(disposing);
    }

    // What stands for the next letter; null where it stands for itself.
    private string? Shown(char letter)
    {
        if (_high != 0)
        {
            var high = _high;
            _high = '\0';
            return char.IsLowSurrogate(letter) && HiddenLetters.Has(char.ConvertToUtf32(high, letter))
                ? Numbered(high, letter) : $"{high}{Shown(letter) ?? letter.ToString()}";
        }
        if (char.IsHighSurrogate(letter))
        {
            // It waits for the other half.
            _high = letter;
            _hashes = 0;
            return "";
        }
        var (isSecond, isThird) = (_colon && letter == ':', _hashes >= 2 && (letter == '[' || char.IsAsciiLetter(letter)));
        Past(letter);
        if (isSecond && !_mayCommand)
            return Broken(letter);
        return isThird ? Broken(letter) : HiddenLetters.Has(letter) ? Numbered('\0', letter) : null;
    }

    private void Past(char letter)
    {
        _colon = letter == ':' && _begins;
        _hashes = letter == '#' ? _hashes + 1 : 0;
        // The log's reader takes white space off the beginning of a line, and what nobody sees may be taken for some.
        _begins = letter is '\n' or '\r' || (_begins && (char.IsWhiteSpace(letter) || char.IsControl(letter) || HiddenLetters.Has(letter)));
    }

    private string Broken(char letter) => _escapes switch
    {
        Escapes.Json => Escaped(letter),
        Escapes.Markup => string.Create(CultureInfo.InvariantCulture, $"&#{(int)letter};"),
        _ => $" {letter}",
    };

    private string Numbered(char high, char letter) =>
        _escapes == Escapes.Json ? (high == 0 ? "" : Escaped(high)) + Escaped(letter)
            : $"{{{HiddenLetters.Number(high == 0 ? letter : char.ConvertToUtf32(high, letter))}}}";

    private static string Escaped(char letter) => string.Create(CultureInfo.InvariantCulture, $"\\u{(int)letter:x4}");
}
