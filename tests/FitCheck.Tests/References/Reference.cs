using Xunit;

namespace FitCheck.Tests.References;

/// <summary>Compares with a published value, and names it and its source when they differ.</summary>
internal static class Reference
{
    public static void Near(string id, string source, double expected, double actual, double relative) =>
        Close(id, source, expected, actual, relative * Math.Abs(expected));

    public static void Close(string id, string source, double expected, double actual, double within) =>
        Assert.True(Math.Abs(actual - expected) <= within + 1e-12,
            $"{id} ({source}): {actual:R} instead of {expected:R} within {within:R}");
}
