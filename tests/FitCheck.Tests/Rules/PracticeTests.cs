using System.Text;
using System.Text.Json;
using FitCheck.Facts;
using FitCheck.Facts.Values;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Rules.Files;
using Xunit;

namespace FitCheck.Tests.Rules;

/// <summary>The figures of `practice.yaml`: what is usual where nobody wrote a datum, and between which bounds it lies.</summary>
public sealed class PracticeTests : IDisposable
{
    private static readonly string Text = File.ReadAllText(RepositoryRoot.Of("rules", "practice.yaml"));

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Those_of_the_project_are_whole()
    {
        var problems = new ProblemList();

        Assert.NotNull(PracticeReader.Read("rules/practice.yaml", Encoding.UTF8.GetBytes(Text), problems));
        Assert.Empty(problems.Sorted().Select(p => p.ToString()));
    }

    [Fact]
    public void The_schema_names_the_same_figures()
    {
        using var schema = JsonDocument.Parse(File.ReadAllText(RepositoryRoot.Of("rules", "schema", "practice.schema.json")));
        var ranges = schema.RootElement.GetProperty("properties").EnumerateObject()
            .Select(p => (p.Name, IsRange: p.Value.GetProperty("$ref").GetString() == "#/definitions/range"));

        Assert.Equal(PracticeFigure.All.Select(f => (f.Name, f.IsRange)), ranges);
        Assert.Equal(PracticeReader.Names,
            schema.RootElement.GetProperty("required").EnumerateArray().Select(n => n.GetString()!));
    }

    [Theory]
    [InlineData("  is: 13.8 V", "  is: 13.8 A", 8, "`is` of the figure `running_voltage` needs a number above 0 in V, found `13.8 A`")]
    [InlineData("  is: 13.8 V", "  is: -13.8 V", 8, "`is` of the figure `running_voltage` needs a number above 0 in V, found `-13.8 V`")]
    [InlineData("running_voltage:", "runing_voltage:", 7,
        "`runing_voltage` is no key of the figures of practice; did you mean `running_voltage`?")]
    [InlineData("  from: 18 W", "  from: 28 W", 28, "`from` of the figure `output_stage_power` must be less than its `to`")]
    [InlineData("  from: 18 W", "  form: 18 W", 28, "`form` is no key of the figure `output_stage_power`; did you mean `from`?")]
    public void A_mistake_is_told_where_it_stands(string written, string instead, int line, string message)
    {
        _folder.Write("rules/practice.yaml", Text.Replace(written, instead, StringComparison.Ordinal));
        var problems = new ProblemList();

        RuleSet.Load([_folder.Of("rules")], FactRegistry.Declarations, problems);

        Assert.Contains(problems.Sorted(), p => p.At.Line == line && p.Message == message && p.At.File.EndsWith("rules/practice.yaml",
            StringComparison.Ordinal));
    }

    [Fact]
    public void Rules_without_them_have_those_of_the_program_and_others_their_own()
    {
        _folder.Write("own/practice.yaml", Text.Replace("13.8 V", "12.6 V", StringComparison.Ordinal));
        Directory.CreateDirectory(_folder.Of("none"));

        Assert.Equal(13.8, Loaded("none").RunningVoltage);
        Assert.Equal(12.6, Loaded("own").RunningVoltage);
    }

    [Fact]
    public void A_later_directory_may_not_have_them()
    {
        _folder.Write("shop/practice.yaml", Text);
        Directory.CreateDirectory(_folder.Of("none"));
        var problems = new ProblemList();

        RuleSet.Load([_folder.Of("none"), _folder.Of("shop")], FactRegistry.Declarations, problems);

        Assert.StartsWith("only the first directory of rules may have these figures", Assert.Single(problems.Sorted()).Message,
            StringComparison.Ordinal);
    }

    private Practice Loaded(string directory)
    {
        var problems = new ProblemList();
        var practice = RuleSet.Load([_folder.Of(directory)], FactRegistry.Declarations, problems).Practice;
        Assert.Empty(problems.Sorted());
        return practice;
    }
}
