using Xunit;

namespace FitCheck.Tests.Reports;

/// <summary>What a name in a catalog may try on those who read a report.</summary>
internal static class HostileTexts
{
    public static TheoryData<string> All =>
    [
        "<script>alert(1)</script> & \"quotes\" 'ticks'",
        "two\nlines\r\nand\u0085more\ttabs",
        "]]> ends a section, --> a comment",
        "100 % %0A::error::injected",
        "x\n::error file=a.yaml,line=1::injected",
        "a::b, c:d,e=f",
        "bell \u0007 escape \u001b[31m null \0 next \uFFFE \uFFFF",
        "half a pair \uD83D and the other \uDE00",
        "{0} {{1}} [text](1) [x]: y",
        "@somebody #12 *bold* _it_ `code` ~~gone~~ | cell | <b>",
        "`<img src=x>` and ``",
        "https://example.org www.example.org ![i](x)",
        "1. list",
        "- item",
        "# heading",
        "</details></summary>",
        "\\",
    ];
}
