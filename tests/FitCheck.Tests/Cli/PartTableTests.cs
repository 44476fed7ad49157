using Xunit;

namespace FitCheck.Tests.Cli;

/// <summary>`new part KIND --from` and `--to`: what is refused is told, the rest is written, and nothing is written over.</summary>
public sealed class PartTableTests : IDisposable
{
    private const string Table = "id,name,type,size,shape,pack,price,availability,depth [mm]\n"
        + "one,One,woofer,165 mm,round,2,59.00 EUR,current,60\ntwo,Two,woofer,165 mm,round,2,59.00 EUR,current,61 kg\n"
        + "three,Three,woofer,165 mm,round,2,,current,62\n";

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Rows_become_a_list_that_lint_takes()
    {
        _folder.Write("drivers.csv", Table);
        Directory.CreateDirectory(_folder.Of("shop/drivers"));

        var (status, output, error) = Run.Of(_folder.Path, "new", "part", "driver", "--from", "drivers.csv", "-o",
            "shop/drivers/table.yaml");

        Assert.Equal((2, ""), (status, output));
        Assert.Contains("drivers.csv:3:49: error: expected a length with its unit", error, StringComparison.Ordinal);
        Assert.Contains("the key `price` is missing here", error, StringComparison.Ordinal);
        Assert.EndsWith("2 entries are written to shop/drivers/table.yaml\n", error, StringComparison.Ordinal);
        Assert.Equal(0, Run.Of(_folder.Path, "lint", "--catalog", "default", "--catalog", "shop").Status);
    }

    [Fact]
    public void In_a_folder_each_has_its_file_and_what_is_there_is_kept()
    {
        _folder.Write("drivers.csv", Table);
        var kept = _folder.Write("shop/one.yaml", "mine\n");

        var (status, _, error) = Run.Of(_folder.Path, "new", "part", "driver", "--from", "drivers.csv", "-o", "shop");

        Assert.Equal(2, status);
        Assert.Contains("exists; it is kept as it is", error, StringComparison.Ordinal);
        Assert.Equal("mine\n", File.ReadAllText(kept));
        Assert.StartsWith("id: two\nkind: driver\n", File.ReadAllText(_folder.Of("shop/two.yaml")), StringComparison.Ordinal);
        Assert.Equal(2, Directory.GetFiles(_folder.Of("shop")).Length);
    }

    [Fact]
    public void The_catalog_goes_into_a_table_and_comes_back()
    {
        Assert.Equal((0, "", ""), Run.Of(_folder.Path, "new", "part", "amplifier", "--to", "amplifiers.csv"));

        var (status, output, _) = Run.Of(_folder.Path, "new", "part", "amplifier", "--from", "amplifiers.csv");

        Assert.Equal(0, status);
        Assert.Contains("- id: kestow-d4-60\n", output, StringComparison.Ordinal);
        Assert.Equal((2, "fitcheck: amplifiers.csv exists; it is kept as it is\n"),
            (Run.Of(_folder.Path, "new", "part", "amplifier", "--to",
            "amplifiers.csv") is var (again, _, told) ? (again, told) : default));
    }

    [Theory]
    [InlineData(3, "--from", "drivers.csv", "--to", "x.csv")]
    [InlineData(3, "--to", "x.csv", "-o", "y.csv")]
    [InlineData(3, "--to", "x.xlsx")]
    [InlineData(2, "--from", "missing.csv")]
    [InlineData(2, "--from", "drivers.csv", "-o", "drivers.csv")]
    public void Wrong_use_and_wrong_input_have_their_statuses(int status, params string[] arguments)
    {
        _folder.Write("drivers.csv", Table);

        var (actual, output, error) = Run.Of(_folder.Path, ["new", "part", "driver", .. arguments]);

        Assert.Equal((status, ""), (actual, output));
        Assert.StartsWith("", error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
        Assert.Equal(Table, File.ReadAllText(_folder.Of("drivers.csv")));
    }
}
