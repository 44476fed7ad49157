using FitCheck.Foundation.Problems;

namespace FitCheck.Cli.Commands;

/// <summary>What people call the kinds of entries.</summary>
internal static class KindWords
{
    private static readonly Dictionary<string, string> Called = new(StringComparer.OrdinalIgnoreCase)
    {
        ["spacer"] = "adapter",
        ["ring"] = "adapter",
        ["plate"] = "adapter",
        ["bracket"] = "adapter",
        ["speaker"] = "driver",
        ["loudspeaker"] = "driver",
        ["woofer"] = "driver",
        ["tweeter"] = "driver",
        ["subwoofer"] = "driver",
        ["coaxial"] = "driver",
        ["set"] = "component-set",
        ["amp"] = "amplifier",
        ["radio"] = "source-unit",
        ["source"] = "source-unit",
        ["head-unit"] = "source-unit",
        ["converter"] = "line-converter",
        ["plug"] = "harness",
        ["loom"] = "harness",
        ["car"] = "vehicle",
        ["van"] = "vehicle",
        ["cable"] = "wiring",
        ["fuse"] = "wiring",
        ["kit"] = "wiring",
        ["wire"] = "wiring",
        ["pod"] = "cup",
        ["screw"] = "sundry",
        ["screws"] = "sundry",
        ["tape"] = "sundry",
        ["capacitor"] = "sundry",
        ["gasket"] = "sundry",
    };

    /// <summary>What is wrong with a word for a kind; null for a kind.</summary>
    public static string? Wrong(string word, IReadOnlyList<string> kinds) => kinds.Contains(word, StringComparer.Ordinal) ? null
        : Called.TryGetValue(word, out var kind) ? $"there is no kind `{word}`; what is called so is of the kind `{kind}`"
        : $"there is no kind `{word}`{(Nearest.Hint(word, kinds) is { Length: > 0 } hint ? hint
            : $"; the kinds are {string.Join(", ", kinds)}")}";
}
