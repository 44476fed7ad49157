using System.Diagnostics;
using System.Reflection;
using CsCheck;
using FitCheck.Foundation.Problems;
using FitCheck.Rules.Messages;
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
    [InlineData("{{ if value == '3 mm' && !(limit == \"3 mm\") }}A{{ else if limit }}B{{ end }}", "A")]
    [InlineData("{{- if !value -}} A {{~ else ~}} B {{ end }}", "B")]
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
    [InlineData("{{ for a in 1..99 }}{{ for b in 1..99 }}{{ for c in 1..99 }}{{ for d in 1..99 }}{{ for e in 1..99 }}{{ end }}{{ end "
        + "}}{{ end }}{{ end }}{{ end }}")]
    [InlineData("{{ func a; 1; end; func b; for i in 1..99; a; end; end; func c; for i in 1..99; b; end; end; func d; for i in 1..99; "
        + "c; end; end; for i in 1..99; d; end }}")]
    [InlineData("{{ f = do; 1; end; @f }}")]
    [InlineData("{{ x = 'xxxxxxxxxx' }}{{ x = x + x }}")]
    [InlineData("{{ 1 / 0 }}{{ value - 1 }}")]
    [InlineData("{{ x = 'xxxxxxxxxx' }}{{ x += x }}")]
    [InlineData("{{ capture x }}a{{ end }}")]
    [InlineData("{{ import value }}")]
    [InlineData("{{ value | string.upcase }}")]
    [InlineData("{{ [1, 2] }}")]
    [InlineData("{{ $1 }}")]
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
    [InlineData("{{ if value == 'x' || !limit }}{{ x = limit }}{{ else }}{{ x = value }}{{ end }}{{ x }}")]
    public void Variables_of_its_own_are_no_mistake(string text) => Assert.Empty(Check(text));

    // Each of these alone keeps within the engine's limits; calling each other, five of them in a row would take centuries.
    [Theory]
    [InlineData("{{ func f; 1; end }}", "func f; 1; end")]
    [InlineData("{{ if value }}{{ for i in 1..3 }}{{ i }}{{ end }}{{ end }}", "for i in 1..3 }}{{ i }}{{ end")]
    [InlineData("{{ while false }}x{{ end }}", "while false }}x{{ end")]
    [InlineData("{{ f = do; 1; end }}", "do; 1; end")]
    [InlineData("{{ include 'x' }}", "include 'x'")]
    [InlineData("{{ value + limit }}", "value + limit")]
    [InlineData("{{ value.size }}", "value.size")]
    public void What_is_not_for_messages_is_refused_before_anything_is_filled_in(string text, string shown)
    {
        var told = Assert.Single(Check(text));
        Assert.Equal($"`{shown}` is not for messages: they name facts, compare them, and say `if`, `else` and `end`", told.Message);
        Assert.Equal(Nowhere, told.At);
    }

    [Fact]
    public void Brackets_within_brackets_end_too()
    {
        var text = "{{ " + new string('(', 1900) + "value" + new string(')', 1900) + " }}";
        Assert.Null(Render(text, out var problem));
        Assert.NotEmpty(problem!);
    }

    [Fact]
    public void Single_names_are_filled_in_as_the_engine_does() =>
        Gen.OneOf(Gen.Const("{{ value }}"), Gen.Const("{{limit}}"), Gen.Const("{{"), Gen.Const("}}"), Gen.Const("{ "), Gen.Const("}"),
            Gen.Const("a "), Gen.Const("{{ other }}"), Gen.Const("{{ end }}"), Gen.Const("\n"))
            .List[0, 6].Select(pieces => string.Concat(pieces)).Sample(text =>
            {
                var byEngine = new MessageTemplate(text, Nowhere).RenderByEngine(Variable, out _);
                return Render(text,
                    out _) == (byEngine is null ? null
                        : string.Join(' ', byEngine.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)));
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
