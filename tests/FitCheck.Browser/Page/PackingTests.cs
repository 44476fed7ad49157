using Xunit;

namespace FitCheck.Browser.Page;

/// <summary>What is published was found valid.</summary>
public sealed class PackingTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fitcheck-packing-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public async Task A_catalog_with_a_mistake_is_not_published()
    {
        var drivers = _folder.CreateSubdirectory("catalog").CreateSubdirectory("drivers");
        await File.WriteAllTextAsync(Path.Combine(drivers.FullName, "torn.yaml"), "id: torn\nkind: [\n");

        var (status, said) = await PackAsync();

        Assert.Equal(2, status);
        Assert.Contains("torn.yaml:3:1: error: not valid YAML", said, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(_folder.FullName, "site")));
    }

    [Fact]
    public async Task A_page_of_another_library_is_not_published()
    {
        _folder.CreateSubdirectory("catalog");
        var framework = _folder.CreateSubdirectory("published").CreateSubdirectory("_framework");
        await File.WriteAllBytesAsync(Path.Combine(framework.FullName, "FitCheck.Core.0123456789.wasm"), new byte[100]);

        var (status, said) = await PackAsync();

        Assert.Equal(70, status);
        Assert.Contains("was not published with the library that found the catalog valid", said, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(_folder.FullName, "site")));
    }

    private Task<(int Status, string Said)> PackAsync()
    {
        var configuration = new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name;
        var program = Path.Combine(StaticSite.Root(), "src", "FitCheck.Page.Static", "Packing", "bin", configuration, "net10.0",
            "FitCheck.Page.Packing.dll");
        return StaticSite.RunAsync("dotnet", program, In("published"), In("catalog"), Path.Combine(StaticSite.Root(), "rules"),
            Path.Combine(StaticSite.Root(), "reports"), In("site"));
    }

    private string In(string name) => Path.Combine(_folder.FullName, name);
}
