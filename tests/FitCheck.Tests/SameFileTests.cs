using FitCheck.Foundation.Files;
using Xunit;

namespace FitCheck.Tests;

/// <summary>POSIX names a file by its device and its number there (3.147 and 3.176 of the base definitions), not by its path.</summary>
public sealed class SameFileTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void One_that_is_yet_to_be_written_is_known_by_its_folder_and_name()
    {
        Directory.CreateDirectory(_folder.Of("a"));
        Assert.Equal(Key("a/new"), Key("./a/../a/new"));
        Assert.NotEqual(Key("a/new"), Key("a/newer"));
        Assert.NotEqual(Key("a/new"), Key("new"));
        Assert.Equal(Key("no/such/new"), Key("no/./such/new"));
        if (OperatingSystem.IsWindows())
            return;
        File.CreateSymbolicLink(_folder.Of("b"), "a");
        File.CreateSymbolicLink(_folder.Of("link"), "a/new");
        Assert.Equal(Key("a/new"), Key("b/new"));
        Assert.Equal(Key("a/new"), Key("link"));
    }

    [Fact]
    public void A_link_that_leads_to_itself_is_a_name_like_any_other()
    {
        if (OperatingSystem.IsWindows())
            return;
        File.CreateSymbolicLink(_folder.Of("round"), "round");
        Assert.NotNull(Key("round"));
    }

    [Fact]
    public void A_device_is_no_file() => Assert.True(!OperatingSystem.IsLinux() || SameFile.Key("/dev/null") is null);

    private string? Key(string name) => SameFile.Key(_folder.Of(name));
}
