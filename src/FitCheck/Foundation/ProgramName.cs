namespace FitCheck.Foundation;

/// <summary>How the program names itself in its output.</summary>
internal static class ProgramName
{
    /// <summary>Such as `0.1.0`.</summary>
    public static string Version { get; } = typeof(ProgramName).Assembly.GetName().Version?.ToString(3) ?? "0.0.0";

    /// <summary>Name and version.</summary>
    public static string WithVersion { get; } = "fitcheck " + Version;
}
