using System.Diagnostics.CodeAnalysis;

namespace FitCheck.Foundation;

/// <summary>
/// The program that a build compiles to machine code, so that a check of known inputs starts at once. It goes without what rare runs need,
/// the schema library and the template engine, and hands such runs over to the whole program.
/// </summary>
internal static class QuickProgram
{
    /// <summary>True in the quick program only; known to its compiler, which leaves out what can't be reached then.</summary>
    [FeatureSwitchDefinition("FitCheck.IsQuick")]
    public static bool IsThis => AppContext.TryGetSwitch("FitCheck.IsQuick", out var quick) && quick;
}

/// <summary>The quick program has come to something that only the whole one can do. Nothing has been written yet.</summary>
internal sealed class HandOverException : Exception;
