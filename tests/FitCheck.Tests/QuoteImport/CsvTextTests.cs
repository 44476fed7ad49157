using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.QuoteImport;
using Xunit;

namespace FitCheck.Tests.QuoteImport;

public sealed class CsvTextTests
{
    [Theory]
    [InlineData("a;b\nc;d\n")]
    [InlineData("a,b\r\nc,d")]
    [InlineData("a\tb\n\n \t \nc\td\n\n")]
    [InlineData("\"a\"; \"b\"\n\"c\";d")]
    [InlineData("a;b\rc;d")]
    public void Cells_are_found_with_every_separator_and_line_end(string text) =>
        Assert.Equal(["a|b", "c|d"], Rows(text).Select(r => string.Join('|', r.Select(c => c.Value))));

    [Fact]
    public void A_cell_in_quotation_marks_holds_anything()
    {
        var row = Assert.Single(Rows("\"say \"\"hi\"\"; twice\nand more\";2"));
        Assert.Equal(["say \"hi\"; twice\nand more", "2"], row.Select(c => c.Value));
    }

    [Fact]
    public void A_comma_in_a_name_is_no_separator_where_semicolons_are() =>
        Assert.Equal("Ring, 20 mm high", Rows("id;Ring, 20 mm high;1\nx;y;2\n")[0][1].Value);

    [Fact]
    public void Each_cell_knows_its_line_and_column()
    {
        var rows = Rows("\n\"one\ntwo\",b\nc,d");

        Assert.Equal([(2, 1), (3, 6), (4, 1), (4, 3)], rows.SelectMany(r => r).Select(c => (c.At.Line, c.At.Column)));
    }

    [Fact]
    public void A_quotation_mark_that_stays_open_is_told_where_it_stands()
    {
        var problems = new ProblemList();
        CsvText.Rows(new SourceText("q.csv", "a,b\nc,\"d\n"), problems);

        Assert.Equal("q.csv:2:3: error: the quotation mark that begins this cell is never closed", Assert.Single(problems.All).ToString());
    }

    private static IReadOnlyList<IReadOnlyList<Located<string>>> Rows(string text)
    {
        var problems = new ProblemList();
        var rows = CsvText.Rows(new SourceText("q.csv", text), problems);
        Assert.Empty(problems.All);
        return rows;
    }
}
