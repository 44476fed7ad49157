using FitCheck.Cli.Asking;
using Xunit;

namespace FitCheck.Tests.Asking;

public class StepsTests
{
    private static readonly Choice[] Two = [new("a", "one"), new("b", "other")];

    /// <summary>Answers in turn; null goes back.</summary>
    private sealed class InTurn(params string?[] answers) : IQuestions
    {
        private int _next;

        public List<string> Asked { get; } = [];

        public Choice One(string question, IReadOnlyList<Choice> choices)
        {
            var answer = Next(question);
            return choices.Single(c => c.Id == answer);
        }

        public IReadOnlyList<Choice> Several(string question, IReadOnlyList<Choice> choices, IReadOnlyList<Choice> usual,
            bool atLeastOne) =>
            [One(question, choices)];

        public string Text(string question, string usual, Func<string, string?> wrong) => Next(question);

        public void Say(string text) => Asked.Add(text);

        private string Next(string question)
        {
            Asked.Add(question);
            return answers[_next++] ?? throw new StepBack();
        }
    }

    private static string Dialogue(IQuestions ask)
    {
        var first = ask.One("first", Two).Id;
        ask.Say($"said {first}");
        var second = ask.Several($"second after {first}", Two, [], atLeastOne: true)[0].Id;
        return first + second + ask.Text("third", "", _ => null);
    }

    [Fact]
    public void A_step_back_asks_the_question_before_again_and_keeps_what_stood_before_it()
    {
        var ask = new InTurn("a", "a", null, "b", "c");

        Assert.Equal("abc", new Steps(ask).Through(Dialogue));
        Assert.Equal(["first", "said a", "second after a", "third", "said a", "second after a", "third"], ask.Asked);
    }

    [Fact]
    public void Several_steps_back_lead_to_other_questions_and_none_before_the_first()
    {
        var ask = new InTurn(null, "a", "a", null, null, "b", "a", "c");

        Assert.Equal("bac", new Steps(ask).Through(Dialogue));
        Assert.Equal("second after b", ask.Asked[^2]);
    }
}
