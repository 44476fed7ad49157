using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using Xunit;

namespace FitCheck.Tests.Rules;

/// <summary>Directories of rules.</summary>
public sealed class RuleSetTests : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("fitcheck-rules-").FullName;

    public void Dispose() => Directory.Delete(_root, recursive: true);

    [Fact]
    public void Rules_are_read_by_their_ids_and_the_schema_is_left_out()
    {
        Write("base/mount/too-deep.yaml", SampleRule.TooDeep);
        Write("base/mount/a.yaml", SampleRule.TooDeep.Replace("mount/too-deep", "mount/a", StringComparison.Ordinal));
        Write("base/schema/example.yaml", "nothing");
        var rules = Load(out var problems, "base");
        Assert.Empty(problems);
        Assert.Equal(["mount/a", "mount/too-deep"], rules.Rules.Select(r => r.Id), StringComparer.Ordinal);
        Assert.Equal($"{_root}/base/mount/too-deep.yaml", rules.Find("mount/too-deep")!.At.File);
    }

    [Fact]
    public void A_later_directory_overlays_an_earlier_one()
    {
        Write("base/mount/too-deep.yaml", SampleRule.TooDeep);
        Write("shop/mount/too-deep.yaml",
            SampleRule.TooDeep.Replace("warn: { below: 3 mm }", "warn: { below: 5 mm }", StringComparison.Ordinal));
        var rules = Load(out var problems, "base", "shop");
        Assert.Empty(problems);
        Assert.Equal("below 5 mm", Assert.Single(rules.Rules).Warn!.ToString());
    }

    [Fact]
    public void The_id_is_the_path()
    {
        Write("base/mount/deep.yaml", SampleRule.TooDeep);
        Load(out var problems, "base");
        Assert.Equal(
            $"{_root}/base/mount/deep.yaml:2:5: error: the id is `mount/too-deep`, but the file is `mount/deep.yaml`; they must be the "
                + $"same", Assert.Single(problems).ToString());
    }

    [Fact]
    public void A_directory_that_is_missing_is_told()
    {
        Load(out var problems, "none");
        Assert.Equal("there is no such directory of rules", Assert.Single(problems).Message);
    }

    [Fact]
    public void A_file_with_another_ending_is_not_dropped_in_silence()
    {
        Write("base/mount/too-deep.yml", SampleRule.TooDeep);
        Load(out var problems, "base");
        Assert.Equal(Severity.Warning, Assert.Single(problems).Severity);
    }

    [Fact]
    public void A_broken_rule_leaves_the_others()
    {
        Write("base/mount/too-deep.yaml", SampleRule.TooDeep);
        Write("base/mount/broken.yaml", "id: [");
        Assert.Single(Load(out var problems, "base").Rules);
        Assert.NotEmpty(problems);
    }

    [Fact]
    public void Templates_are_checked_when_asked_for()
    {
        Write("base/mount/too-deep.yaml", SampleRule.TooDeep.Replace("{{ name }}", "{{ nam }}", StringComparison.Ordinal));
        Load(out var quick, "base");
        Assert.Empty(quick);
        Load(out var problems, templates: true, "base");
        Assert.Equal("the message names `nam`, which is neither a fact of this subject nor a word of messages; did you mean `name`?",
            Assert.Single(problems).Message);
    }

    private RuleSet Load(out IReadOnlyList<Problem> problems, params string[] directories) =>
        Load(out problems, templates: false, directories);

    private RuleSet Load(out IReadOnlyList<Problem> problems, bool templates, params string[] directories)
    {
        var list = new ProblemList();
        var rules = RuleSet.Load([.. directories.Select(d => $"{_root}/{d}")], RuleTestFacts.Declared, list, templates);
        problems = list.Sorted();
        return rules;
    }

    private void Write(string path, string text)
    {
        var file = Path.Combine(_root, path);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllText(file, text);
    }
}
