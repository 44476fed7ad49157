namespace FitCheck.Cli.Output;

/// <summary>What the program returns to the shell.</summary>
internal static class ExitStatus
{
    /// <summary>Nothing at or above `--fail-on`.</summary>
    public const int Good = 0;
    /// <summary>Something at or above `--fail-on`.</summary>
    public const int Found = 1;
    /// <summary>An input is invalid or unreadable.</summary>
    public const int BadInput = 2;
    /// <summary>The command line is wrong.</summary>
    public const int BadUsage = 3;
    /// <summary>A defect of the program (EX_SOFTWARE of sysexits).</summary>
    public const int Defect = 70;
}
