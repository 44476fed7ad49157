using FitCheck.Cli.Commands;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using Xunit;

namespace FitCheck.Tests;

/// <summary>A cache may only save time: it must never change an answer.</summary>
[Collection("environment")]
public sealed class RememberedTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly string? _before = Environment.GetEnvironmentVariable("FITCHECK_CACHE");

    public RememberedTests() => Environment.SetEnvironmentVariable("FITCHECK_CACHE", _folder.Of("cache"));

    public void Dispose()
    {
        Environment.SetEnvironmentVariable("FITCHECK_CACHE", _before);
        _folder.Dispose();
    }

    private static readonly string Key = ValidationCache.Key([1, 2, 3]);

    private string Note => _folder.Of($"cache/{Key}.valid");

    [Fact]
    public void What_was_added_is_known_and_nothing_else()
    {
        ValidationCache.InUserFolder().Add(Key);

        Assert.True(ValidationCache.InUserFolder().Knows(Key));
        Assert.False(ValidationCache.InUserFolder().Knows(ValidationCache.Key([1, 2, 4])));
    }

    [Fact]
    public void A_key_tells_parts_apart_not_only_their_bytes() =>
        Assert.NotEqual(ValidationCache.Key([1, 2], [3]), ValidationCache.Key([1], [2, 3]));

    [Theory]
    [InlineData("")]
    [InlineData("FitCheck found")]
    [InlineData("FitCheck found the inputs with this digest valid.\n0000\n")]
    public void A_torn_or_foreign_note_is_not_believed(string text)
    {
        ValidationCache.InUserFolder().Add(Key);
        File.WriteAllText(Note, text);

        Assert.False(ValidationCache.InUserFolder().Knows(Key));
    }

    [Fact]
    public void A_folder_that_cannot_be_written_is_as_good_as_none()
    {
        File.WriteAllText(_folder.Of("cache"), "a file, not a folder");

        ValidationCache.InUserFolder().Add(Key);

        Assert.False(ValidationCache.InUserFolder().Knows(Key));
    }

    [Fact]
    public void A_build_that_breaks_its_schema_is_told_every_time()
    {
        var file = _folder.Write("b.yaml",
            "kind: build\nname: A\nvehicle: tansy-hatch\nfit:\n  - {at: [front-door-left], drivr: orrin-c165}\n");
        var folders = new Folders([RepositoryRoot.Of("catalog")], [RepositoryRoot.Of("rules")]);

        var first = new Once(folders, ValidationCache.InUserFolder()).Check([file]);
        var second = new Once(folders, ValidationCache.InUserFolder()).Check([file]);

        Assert.Null(second.Result);
        Assert.Equal(first.Problems, second.Problems);
        Assert.Contains("did you mean `driver`?", Assert.Single(second.Problems).Message, StringComparison.Ordinal);
    }
}
