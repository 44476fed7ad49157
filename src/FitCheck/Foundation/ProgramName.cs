namespace FitCheck.Foundation;

/// <summary>How the program names itself in its output.</summary>
public static class ProgramName
{
    public static string Version { get; } = typeof(ProgramName).Assembly.GetName().Version?.ToString(3) ?? "0.0.0";

    public static string WithVersion { get; } = "fitcheck " + Version;
}
