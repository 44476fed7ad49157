using Xunit;

namespace FitCheck.Tests.Cli;

/// <summary>`fitcheck measure` in a pipe: a list with lines to fill in, and a card; nothing is asked and nothing is written.</summary>
public sealed class MeasureCommandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly string _text = File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "alder-missing-data.yaml"));

    public MeasureCommandTests() => _folder.Write("mine.yaml", _text);

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_pipe_gets_the_lines_and_the_build_stays()
    {
        var run = Run.Of(_folder.Path, "measure", "mine.yaml");

        Assert.Equal(1, run.Status); // something waits
        Assert.Contains("\n     - {at: front-door-left, of: mounting.depth, value: ____ mm}\n", run.Out, StringComparison.Ordinal);
        Assert.Equal(_text, File.ReadAllText(_folder.Of("mine.yaml")));
    }

    [Fact]
    public void Nothing_left_is_said_and_is_fine()
    {
        var run = Run.Of(_folder.Path, "measure", RepositoryRoot.Of("catalog", "builds", "front-rear-two-amps.yaml"));

        Assert.Equal(0, run.Status);
        Assert.Contains("Nothing is left to measure.", run.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("measure")]
    [InlineData("measure", "mine.yaml", "--vehicle", "new")]
    [InlineData("measure", "--vehicle", "new")]
    public void What_is_not_clear_is_wrong_usage(params string[] words) => Assert.Equal(3, Run.Of(_folder.Path, words).Status);

    [Fact]
    public void A_build_that_can_t_be_read_is_told()
    {
        Assert.Equal(2, Run.Of(_folder.Path, "measure", "none.yaml").Status);
        Assert.Equal(2, Run.Of(_folder.Path, "measure", "--vehicle", "nosuch", "--card", "card.html").Status);
        Assert.False(File.Exists(_folder.Of("card.html")));
    }

    [Fact]
    public void The_card_has_a_field_for_each_reading_and_what_it_decides()
    {
        var run = Run.Of(_folder.Path, "measure", "mine.yaml", "--card", "card.html");
        var card = File.ReadAllText(_folder.Of("card.html"));

        Assert.Equal(1, run.Status);
        Assert.Contains("Free depth behind the panel", card, StringComparison.Ordinal);
        Assert.Contains("mount/too-deep", card, StringComparison.Ordinal);
        Assert.Equal(System.Text.RegularExpressions.Regex.Count(run.Out, "- \\{at: "),
            System.Text.RegularExpressions.Regex.Count(card, "class=\"(field|choice)\""));
        Assert.Contains("<svg", card, StringComparison.Ordinal);
    }

    [Fact]
    public void The_card_of_a_new_vehicle_asks_for_what_its_schema_has()
    {
        var run = Run.Of(_folder.Path, "measure", "--vehicle", "new", "--card", "card.html");
        var card = File.ReadAllText(_folder.Of("card.html"));

        Assert.Equal(0, run.Status);
        foreach (var words in new[] { "Front door, left", "Rear door, right", "Tweeter, left",
            "Alternator", "Hole in the panel", "Window glass" })
            Assert.Contains(words, card, StringComparison.Ordinal);
    }

    [Fact]
    public void The_card_is_written_over_nothing_that_is_read() =>
        Assert.Equal(3, Run.Of(_folder.Path, "measure", "mine.yaml", "--card", "mine.yaml").Status);
}
