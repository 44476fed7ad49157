using FitCheck.Catalog;
using FitCheck.DataSheets;
using FitCheck.Foundation.Problems;
using FitCheck.QuoteImport;
using FitCheck.Schemas;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.DataSheets;

/// <summary>A table of data sheets becomes entries, and entries a table.</summary>
public sealed class EntryTableTests
{
    private static readonly PartsCatalog Catalog = PartsCatalog.Open([RepositoryRoot.Of("catalog")], new ProblemList());

    // The invented sheet of a maker, with the slips that such tables have.
    private const string Sheet = """
        Velm Acoustics, price list 7;;;;;;;;;;
        Name;Type;Size (in);Shape;Pack;Price [EUR];Availability;Depth [mm];Fs (Hz);Re;Sensitivity;Article number
        Velm W6;Woofer;6.5;round;2;89,00;current;62,5;58;3.4 Ohms;87dB @1W/1m;V-6001
        Velm W8;coaxial;8 in;round;2;99;current;70 kg;1,234;;;
        Velm T1;tweeterr;25 mm;round;2;40.00 EUR;current;;;;;
        """;

    public static TheoryData<string> PartKinds() => [.. Kinds.All.Select(k => k.Kind)];

    // The expectation is the catalog itself: what goes out as a table comes back as it was, key by key.
    [Theory, MemberData(nameof(PartKinds))]
    public void Every_entry_of_the_catalog_comes_back_equal(string kind)
    {
        var entries = Catalog.IdsOf(kind).Select(id => (YamlMap)Catalog.Written(id)!).ToList();
        Assert.NotEmpty(entries);

        var (back, told) = Read(kind, TableText.Of(kind, entries));

        Assert.Equal("", told);
        Assert.Equal(entries.Select(Told), back.Select(Told));
        var again = (YamlList)YamlReader.Read(new FitCheck.Foundation.Files.SourceText("l.yaml", EntryBlockText.Of(back)),
            new ProblemList())!;
        Assert.Equal(entries.Select(Told), again.Items.Select(Told));
    }

    [Fact]
    public void Units_come_from_heading_or_cell_and_are_spelled_as_the_catalog_does()
    {
        var (entries, _) = Read("driver", Sheet);

        // 6.5 in, 62.5 mm and 58 Hz by the headings; the cell's own unit otherwise.
        var first = Told(entries[0]);
        foreach (var expected in new[] { "id=velm-w6", "kind=driver", "type=woofer", "size=6.5 in", "price=89.00 EUR",
            "dimensions.depth=62.5 mm",
            "parameters.fs=58 Hz", "parameters.re=3.4 ohm", "sensitivity=87 dB @ 1 W/1 m", "articles[0]=V-6001", "provenance=datasheet" })
            Assert.Contains(expected, first.Split('\n'));
    }

    [Fact]
    public void Refused_cells_are_told_with_row_and_column_all_at_once_and_the_rest_is_kept()
    {
        var (entries, told) = Read("driver", Sheet);

        Assert.Equal(["velm-w6", "velm-w8"], entries.Select(e => ((YamlScalar)e["id"]!).Text));
        Assert.DoesNotContain("dimensions.depth", Told(entries[1]), StringComparison.Ordinal);
        var lines = told.Split('\n');
        Assert.Contains(lines, l => l.StartsWith("t.csv:4:", StringComparison.Ordinal) && l.Contains("`70 kg`", StringComparison.Ordinal)
            && l.Contains("a length with its unit", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.StartsWith("t.csv:4:", StringComparison.Ordinal) && l.Contains("`1,234`", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.StartsWith("t.csv:5:", StringComparison.Ordinal)
            && l.Contains("did you mean `tweeter`", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.StartsWith("t.csv:5:", StringComparison.Ordinal)
            && l.Contains("`type` is missing", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("name,colour\nA,red\n", "`colour` is no key of a driver")]
    [InlineData("name,capacitor\nA,1 uF\n", "may be `built_in_tweeter.capacitor` or `own_high_pass.capacitor`")]
    [InlineData("colour,taste\nred,sour\n", "no row of headings")]
    [InlineData("id,depth [mm],mounting depth [mm]\na,1,2\n", "has a column already")]
    public void Headings_that_are_no_key_are_told(string table, string expected) =>
        Assert.Contains(expected, Read("driver", table).Told, StringComparison.Ordinal);

    [Fact]
    public void Of_two_rows_with_one_id_the_second_is_refused()
    {
        var row = "one,A,woofer,165 mm,round,2,9.00 EUR,current\n";
        var (entries, told) = Read("driver", "id,name,type,size,shape,pack,price,availability\n" + row + row);

        Assert.Single(entries);
        Assert.Contains("t.csv:3:1: error: the id `one` is that of row 2 too", told, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a: \"no\"\nb: no, or yes\nc: \"true\"\nd: true\ne: [1, '1', a b, 'x, y']\n")]
    [InlineData("f: {g: 'h: i', j: \"#k\"}\nl: \"two\\nlines\"\nm: -3 dB\nn: '- o'\n")]
    public void What_is_written_reads_as_it_was(string text)
    {
        var node = (YamlMap)YamlReader.Read(new FitCheck.Foundation.Files.SourceText("f", text), new ProblemList())!;

        var again = YamlReader.Read(new FitCheck.Foundation.Files.SourceText("f", EntryBlockText.Of(node)), new ProblemList())!;

        Assert.Equal(Told(node), Told(again));
    }

    private static (IReadOnlyList<YamlMap> Entries, string Told) Read(string kind, string table)
    {
        var problems = new ProblemList();
        var file = QuoteFile.Read("t.csv", System.Text.Encoding.UTF8.GetBytes(table), problems)!;
        var entries = EntryTable.Read(kind, file, problems);
        return (entries, string.Join('\n', problems.Sorted().Select(p => p.ToString())));
    }

    // Keys in ordinal order, each scalar with the sort of thing that it is.
    private static string Told(YamlNode node) => string.Join('\n', Lines(node, "").Order(StringComparer.Ordinal));

    private static IEnumerable<string> Lines(YamlNode node, string path) => node switch
    {
        YamlMap map => map.Entries.SelectMany(e => Lines(e.Value, path.Length == 0 ? e.Key : $"{path}.{e.Key}")),
        YamlList { Items.Count: 0 } => [$"{path}=[]"],
        YamlList list => list.Items.SelectMany((item, i) => Lines(item, $"{path}[{i}]")),
        YamlScalar scalar => [$"{path}={(FlowText.IsText(scalar) ? "" : "!")}{scalar.Text}"],
        _ => [],
    };
}
