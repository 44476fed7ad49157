namespace FitCheck.Cli.Output;

/// <summary>A sentence that says why a command does not go on, and the exit status that goes with it.</summary>
internal sealed record Refusal(string Message, int Status)
{
    /// <summary>The command line is wrong.</summary>
    public static Refusal Usage(string message) => new(message, ExitStatus.BadUsage);

    /// <summary>Something that it names can't be used.</summary>
    public static Refusal Input(string message) => new(message, ExitStatus.BadInput);

    /// <summary>Says so on standard error, and returns the status.</summary>
    public int Tell()
    {
        Console.Error.WriteLine("fitcheck: " + Reports.Wording.PlainText.Line(Message));
        return Status;
    }
}
