using FitCheck.Cli.Asking;
using FitCheck.Cli.Measuring;
using FitCheck.Evaluation;

using FitCheck.Measuring;
using FitCheck.Reports.Text;
using Xunit;

namespace FitCheck.Tests.Asking;

public sealed class MeasureDialogueTests : IDisposable
{
    private static readonly Checker Checker = FitCheck.Checker.Open(new CheckerOptions
    {
        Catalogs = [RepositoryRoot.Of("catalog")],
        Rules = [RepositoryRoot.Of("rules")],
    }).Checker!;

    private static readonly string Text = File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "alder-missing-data.yaml"));

    private readonly StringWriter _page = new();
    private readonly List<string> _kept = [];

    private (BuildResult Build, MeasureDialogue Dialogue) Asked(IQuestions answers,
        Func<string, string?>? keep = null, string? text = null)
    {
        var dialogue = new MeasureDialogue(answers, new TextPage(_page, 100, color: false), Judged,
            keep ?? Kept)
        { Today = new(2026, 11, 2) };
        return (dialogue.Run(text ?? Text, Judged(text ?? Text).Result!.Builds[0]), dialogue);

        string? Kept(string written)
        {
            _kept.Add(written);
            return null;
        }
    }

    public void Dispose() => _page.Dispose();

    private static CheckOutcome Judged(string text) => Checker.Check([BuildSource.Text("mine.yaml", text)]);

    [Fact]
    public void The_door_is_gone_through_from_the_plug_to_the_card_and_one_place_after_the_other()
    {
        var answers = new ListedAnswers(("", ""));
        Asked(answers);

        var questions = answers.Asked.Select(a => a.Question).ToList();
        int At(string what, int skip = 0) => questions.Select((q, i) => (q, i)).Where(x => x.q.StartsWith(what, StringComparison.Ordinal))
            .Skip(skip).First().i;
        // Trim off, driver out, then the hole, what is behind it, and what needs the card on again: common practice, no source.
        Assert.True(At("Polarity of the factory wires") < At("Diameter of the hole in the panel"));
        Assert.True(At("Diameter of the hole in the panel") < At("Free depth behind the panel"));
        Assert.True(At("Free depth behind the panel") < At("Gap from the panel to the grille"));
        Assert.True(At("Gap from the panel to the grille") < At("Polarity of the factory wires", skip: 1)); // the other door
    }

    [Fact]
    public void Enter_skips_and_writes_nothing()
    {
        var (_, dialogue) = Asked(new ListedAnswers(("", "")));

        Assert.Empty(_kept);
        Assert.Equal(0, dialogue.Written);
    }

    [Fact]
    public void Who_goes_back_is_asked_the_question_before_anew_and_what_was_written_for_it_goes()
    {
        var answers = new ListedAnswers(("", ""));
        Asked(answers);
        var questions = answers.Asked.Select(a => a.Question).ToList();

        // Back at the very first, then one is written, one skipped, and both are gone back to.
        var back = new ScriptedAnswers("back", "", "stop");
        Asked(back);
        Assert.Equal([questions[0], questions[0], questions[1]], back.Asked);

        var depth = questions.FindIndex(q => q.StartsWith("Free depth behind the panel", StringComparison.Ordinal));
        string[] skipped = [.. Enumerable.Repeat("", depth)];
        back = new ScriptedAnswers([.. skipped, "80", "", "back", "back", "70", "stop"]);
        var (_, dialogue) = Asked(back);

        Assert.Equal([questions[depth], back.Asked[depth + 1], back.Asked[depth + 2], back.Asked[depth + 1], questions[depth],
            back.Asked[depth + 1]], back.Asked.Skip(depth));
        Assert.Equal(1, dialogue.Written);
        Assert.Equal(3, _kept.Count);
        Assert.Contains("of: mounting.depth, value: 80 mm", _kept[0], StringComparison.Ordinal);
        Assert.Equal(Text, _kept[1]);
        Assert.Contains("of: mounting.depth, value: 70 mm", _kept[2], StringComparison.Ordinal);
        Assert.DoesNotContain("value: 80 mm", _kept[2], StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_is_written_with_its_day_and_judged_at_once()
    {
        var (build, dialogue) = Asked(new ListedAnswers(("Free depth behind the panel", "80"), ("", "")));

        Assert.Equal(2, dialogue.Written); // both doors
        Assert.StartsWith(Text.TrimEnd(), _kept[0], StringComparison.Ordinal);
        Assert.Contains("- {at: front-door-left, of: mounting.depth, value: 80 mm, tolerance: 0.5 mm, on: 2026-11-02}", _kept[0],
            StringComparison.Ordinal);
        Assert.Equal(2, _kept[1].Split("of: mounting.depth").Length - 1);
        Assert.DoesNotContain(build.Findings.Where(f => f.Rule == "mount/too-deep").SelectMany(f => f.ToMeasure),
            t => t.What.StartsWith("free depth", StringComparison.Ordinal));
        Assert.Contains("→ ", _page.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void What_it_decides_is_told_with_the_value_that_passes()
    {
        Asked(new ListedAnswers(("", "")));

        Assert.Matches(@"decides .*\(mount/grille-too-near\)[^.]*: passes with\s+[0-9.]+ mm\s+or more",
            _page.ToString().ReplaceLineEndings(" "));
    }

    [Fact]
    public void Who_stops_is_asked_no_more()
    {
        var answers = new ListedAnswers(("Rated impedance", "stop"), ("", ""));
        Asked(answers);

        Assert.Single(answers.Asked);
    }

    [Fact]
    public void What_can_t_be_written_ends_the_questions_and_is_told()
    {
        var answers = new ListedAnswers(("Rated impedance", "4 ohm"), ("", ""));
        var (_, dialogue) = Asked(answers, _ => "the disk is full");

        Assert.Equal("the disk is full", dialogue.Failed);
        Assert.Single(answers.Asked);
    }

    [Fact]
    public void When_all_is_answered_nothing_more_is_asked()
    {
        var text = Text;
        BuildResult build = Judged(text).Result!.Builds[0];
        for (var round = 0; round < 200 && OpenReadings.Of(build).Count > 0; round++)
        {
            var reading = OpenReadings.Of(build)[0];
            var typed = reading.Answer.Words is [var word, ..] ? word
                : reading.Decides.Select(d => d.Passing).FirstOrDefault(p => p is not null) is { } passing
                    ? string.Join(' ', passing.Split(' ')[..2])
                : "60";
            var given = TypedReading.Of(reading.Answer, typed, inInches: false).Reading;
            Assert.NotNull(given);
            text = ReadingWriter.Written(text, reading.Key, given with { Tolerance = null }, new(2026, 11, 2)).Text!;
            build = Judged(text).Result!.Builds[0];
        }

        Assert.Empty(OpenReadings.Of(build));
    }
}
