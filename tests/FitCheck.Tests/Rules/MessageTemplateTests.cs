using System.Diagnostics;
using System.Reflection;
using CsCheck;
using FitCheck.Rules;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.Rules;

/// <summary>Messages are filled in, and a hostile one can neither run long nor reach anything.</summary>
public sealed class MessageTemplateTests
{
    private static readonly Location Nowhere = new("rule.yaml", 1, 1);

    [Theory]
    [InlineData("It is {{ value }}.", "It is 3 mm.")]
    [InlineData("It is {{value}},\n  not {{ limit }}.", "It is 3 mm, not 5 mm.")]
    [InlineData("{{ if value == \"3 mm\" }}Yes.{{ else }}No.{{ end }}", "Yes.")]
    [InlineData("{{ x = value }}{{ x }}", "3 mm")]
    [InlineData("No place.", "No place.")]
    public void Places_are_filled_in(string text, string expected) => Assert.Equal(expected, Render(text, out _));

    [Theory]
    [InlineData("{{ while true }}x{{ end }}")]
    [InlineData("{{ for i in 1..1000000000 }}x{{ end }}")]
    [InlineData("{{ 'xxxxxxxxxx' * 1000000000 }}")]
    [InlineData("{{ x = 'xxxxxxxxxx' }}{{ for i in 1..90 }}{{ x = x + x }}{{ end }}{{ x }}")]
    [InlineData("{{ func f }}{{ f }}{{ end }}{{ f }}")]
    [InlineData("{{ func f; f; end; f }}")]
    [InlineData("{{ include '/etc/passwd' }}")]
    [InlineData("{{ object.eval '1' }}")]
    [InlineData("{{ date.now }}")]
    [InlineData("{{ 2 ** 100000000 }}")]
    [InlineData("{{ 1 << 2000000000 }}")]
    [InlineData("{{ unheard_of }}")]
    [InlineData("{{ if value }}")]
    public void Harm_is_refused_at_once(string text)
    {
        var clock = Stopwatch.StartNew();
        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Null(Render(text, out var problem));
        Assert.NotEmpty(problem!);
        Assert.InRange(clock.Elapsed.TotalSeconds, 0, 5);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 50_000_000);
    }

    [Theory]
    [InlineData("{{ depht }}", "depht")]
    [InlineData("{{ if value }}{{ depht }}{{ end }}", "depht")]
    [InlineData("{{ if value == 'never' }}{{ hidden }}{{ end }}", "hidden")]
    public void An_unknown_variable_is_found_without_rendering(string text, string name)
    {
        var problems = Check(text);
        Assert.Contains($"`{name}`", Assert.Single(problems).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{{ value }}{{ x = limit }}{{ x }}")]
    [InlineData("{{ for i in 1..3 }}{{ i }}{{ end }}")]
    public void Variables_of_its_own_are_no_mistake(string text) => Assert.Empty(Check(text));

    [Fact]
    public void Single_names_are_filled_in_as_the_engine_does() =>
        Gen.OneOf(Gen.Const("{{ value }}"), Gen.Const("{{limit}}"), Gen.Const("{{"), Gen.Const("}}"), Gen.Const("{ "), Gen.Const("}"), Gen.Const("a "), Gen.Const("{{ other }}"), Gen.Const("{{ end }}"), Gen.Const("\n"))
            .List[0, 6].Select(pieces => string.Concat(pieces)).Sample(text =>
            {
                var byEngine = new MessageTemplate(text, Nowhere).RenderByEngine(Variable, out _);
                return Render(text, out _) == (byEngine is null ? null : string.Join(' ', byEngine.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)));
            });

    [Fact]
    public void The_engine_is_not_loaded_for_single_names()
    {
        var template = new MessageTemplate("It is {{ value }}.", Nowhere);
        template.Render(Variable, out _);
        Assert.Null(typeof(MessageTemplate).GetField("_parsed", BindingFlags.NonPublic | BindingFlags.Instance)!.GetValue(template));
    }

    private static IReadOnlyList<Problem> Check(string text)
    {
        var problems = new ProblemList();
        new MessageTemplate(text, Nowhere).Check(["value", "limit"], problems);
        return problems.Sorted();
    }

    private static string? Render(string text, out string? problem) => new MessageTemplate(text, Nowhere).Render(Variable, out problem);

    private static string? Variable(string name) => name switch { "value" => "3 mm", "limit" => "5 mm", _ => null };
}
