using System.Globalization;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.Rules.Conditions;

/// <summary>Cuts an expression into numbers with units, words, names and symbols.</summary>
internal sealed class Lexer(string text, Action<int, string> report)
{
    private static readonly string[] Symbols = ["<=", ">=", "==", "!=", "<", ">", "+", "-", "*", "/", "(", ")", ","];
    private static readonly string[] Connectives = ["and", "or", "not"];

    // Longest first, so that `mm2` is not read as `mm`.
    private static readonly Unit[] Units = LongestFirst();

    private readonly List<Token> _tokens = [];
    private int _at;

    /// <summary>The tokens, closed by one of kind End; null when a character has no meaning, which is reported.</summary>
    public IReadOnlyList<Token>? Read()
    {
        while (true)
        {
            while (_at < text.Length && char.IsWhiteSpace(text[_at]))
                _at++;
            if (_at == text.Length)
                break;
            if (!ReadOne())
                return null;
        }
        _tokens.Add(new Token(TokenKind.End, "", text.Length));
        return _tokens;
    }

    private bool ReadOne()
    {
        var c = text[_at];
        if (char.IsAsciiDigit(c))
            return ReadNumber();
        if (c == '"')
            return ReadWord();
        if (char.IsAsciiLetter(c) || c == '_')
        {
            var name = Identifier(_at);
            _tokens.Add(new Token(TokenKind.Name, name, _at));
            _at += name.Length;
            return true;
        }
        if (Array.Find(Symbols, s => StartsWith(_at, s)) is not { } symbol)
            return Refuse(_at, WhatInstead(c));
        _tokens.Add(new Token(TokenKind.Symbol, symbol, _at));
        _at += symbol.Length;
        return true;
    }

    private bool ReadNumber()
    {
        var start = _at;
        while (_at < text.Length && (char.IsAsciiDigit(text[_at]) || text[_at] == '.'))
            _at++;
        if (!double.TryParse(text.AsSpan(start, _at - start), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)
            || !double.IsFinite(number))
            return Refuse(start, $"`{text[start.._at]}` is no number");
        var next = _at;
        while (next < text.Length && text[next] == ' ')
            next++;
        var unit = Array.Find(Units, u => StartsWith(next, u.Symbol) && EndsThere(next + u.Symbol.Length, u.Symbol));
        if (unit is null && next < text.Length && char.IsAsciiLetter(text[next]) && Identifier(next) is var word
            && !Connectives.Contains(word, StringComparer.Ordinal))
            return Refuse(next, $"`{word}` is no unit that FitCheck knows{Nearest.Hint(word, Units.Select(u => u.Symbol))}");
        if (unit is not null)
            _at = next + unit.Symbol.Length;
        _tokens.Add(new Token(TokenKind.Number, text[start.._at], start, unit?.ToSi(number) ?? number, unit));
        return true;
    }

    private bool ReadWord()
    {
        var end = text.IndexOf('"', _at + 1);
        if (end < 0)
            return Refuse(_at, "the word that starts here has no closing `\"`");
        _tokens.Add(new Token(TokenKind.Word, text[(_at + 1)..end], _at));
        _at = end + 1;
        return true;
    }

    private static Unit[] LongestFirst()
    {
        var units = Array.FindAll([.. Unit.All], u => u.Symbol != "1");
        Array.Sort(units, (a, b) => b.Symbol.Length.CompareTo(a.Symbol.Length));
        return units;
    }

    private string Identifier(int start)
    {
        var end = start;
        while (end < text.Length && (char.IsAsciiLetterOrDigit(text[end]) || text[end] == '_'))
            end++;
        return text[start..end];
    }

    private bool StartsWith(int start, string symbol) => string.CompareOrdinal(text, start, symbol, 0, symbol.Length) == 0;

    private bool EndsThere(int end, string symbol) =>
        end >= text.Length || !char.IsAsciiLetterOrDigit(symbol[^1]) || !(char.IsAsciiLetterOrDigit(text[end]) || text[end] == '_');

    private bool Refuse(int offset, string message)
    {
        report(offset, message);
        return false;
    }

    private static string WhatInstead(char c) => c switch
    {
        '=' => "`=` has no meaning; write `==` to compare",
        '&' => "`&` has no meaning; write `and`",
        '|' => "`|` has no meaning; write `or`",
        '!' => "`!` has no meaning; write `not`",
        '\'' => "a word stands in double quotes here, `\"splice\"`",
        _ when char.IsControl(c) || char.IsSurrogate(c) => "a character here has no meaning in an expression",
        _ => $"`{c}` has no meaning in an expression",
    };
}
