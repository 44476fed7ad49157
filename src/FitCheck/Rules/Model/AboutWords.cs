namespace FitCheck.Rules.Model;

/// <summary>The words under which a subject's chosen parts are found.</summary>
internal static class AboutWords
{
    public static readonly IReadOnlyList<string> All = ["driver", "adapter", "cup", "harness", "crossover", "output", "vehicle", "module",
        "cable", "budget", "quote", "device", "feeder", "fuse", "ground"];
}
