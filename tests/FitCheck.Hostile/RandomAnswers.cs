using FitCheck.Cli.Asking;

namespace FitCheck.Hostile;

/// <summary>Somebody has had enough, as by Ctrl-C.</summary>
internal sealed class BrokenOffException : Exception;

/// <summary>Answers without reading the questions; five seconds are for each of them.</summary>
internal sealed class RandomAnswers(Commands commands, Random random, int most) : IQuestions
{
    private static readonly string[] Typed =
    [
        "", "", "3 1/2 in", "80", "12.5 mm", "64 mm ± 1 mm", "4 ohm", "far", "none", "-1", "0", "1e308", "65 mm ± 1e308 mm", "NaN", "\0",
        "[a]", "# x", ": ", "'", "\"", "\u202E", "::error::x", "mine", "../x.yaml", "180.00 EUR", new('9', 400), "x: {y: [", "yes", "no",
        "+", "[red]x[/]", "a\nb", "\t", "~", "*a", "datasheet", "2026-02-30", "\uD800",
    ];

    private int _asked;

    public Choice One(string question, IReadOnlyList<Choice> choices)
    {
        Next();
        return choices[random.Next(choices.Count)];
    }

    public IReadOnlyList<Choice> Several(string question, IReadOnlyList<Choice> choices, IReadOnlyList<Choice> usual, bool atLeastOne)
    {
        Next();
        IReadOnlyList<Choice> chosen = [.. choices.Where(_ => random.Next(2) == 0)];
        return random.Next(3) == 0 && usual.Count > 0 ? usual : chosen.Count == 0 && atLeastOne ? [choices[0]] : chosen;
    }

    public string Text(string question, string usual, Func<string, string?> wrong)
    {
        Next();
        for (var i = 0; i < 4; i++)
        {
            var typed = Typed[random.Next(Typed.Length)];
            if (Right(typed.Trim(), wrong))
                return typed.Trim();
        }
        return Right(usual, wrong) ? usual : throw new BrokenOffException();
    }

    public void Say(string text) => commands.Again();

    private bool Right(string typed, Func<string, string?> wrong)
    {
        var told = wrong(typed);
        commands.Again();
        commands.Hold(told is not "", $"`{typed}` is refused without a word");
        return told is null;
    }

    private void Next()
    {
        commands.Again();
        if (++_asked > most)
            throw new BrokenOffException();
        if (random.Next(15) == 0)
            throw new StepBack();
    }
}
