using FitCheck.Reports;

namespace FitCheck.Cli.Commands;

/// <summary>What `fitcheck check` was asked for.</summary>
internal sealed record CheckRequest
{
    public IReadOnlyList<string> Builds { get; init; } = [];
    public IReadOnlyList<string> Formats { get; init; } = [];
    public IReadOnlyList<string> Outputs { get; init; } = [];
    public IReadOnlyList<string> Catalog { get; init; } = [];
    public IReadOnlyList<string> Rules { get; init; } = [];
    /// <summary>The file for the installation sheet; null when none is wanted.</summary>
    public string? Sheet { get; init; }
    /// <summary>For whom the page is; null when nobody said.</summary>
    public string? For { get; init; }
    public string FailOn { get; init; } = "fail";
    /// <summary>Where the files are sellers' lists; null where they are builds.</summary>
    public QuoteRequest? Quote { get; init; }
    /// <summary>
    /// Whether builds that say what they are meant to give are held to that, and not to the status from which the run fails.
    /// </summary>
    public bool AsExpected { get; init; }
    /// <summary>The word after `--units`; null without one.</summary>
    public string? Units { get; init; }
    public bool Verbose { get; init; }
    public bool NoColor { get; init; }

    /// <summary>
    /// A command line that is well formed and uses nothing but words and long or short options with a word after them. Null for any other,
    /// which the library for command lines takes apart: loading that for every check would cost a tenth of its time.
    /// </summary>
    public static CheckRequest? Plain(string[] args)
    {
        if (args.Length < 2 || args[0] != "check")
            return null;
        List<string> builds = [], formats = [], outputs = [], catalog = [], rules = [], failOn = [], sheet = [], units = [];
        bool verbose = false, noColor = false, asExpected = false;
        for (var i = 1; i < args.Length; i++)
        {
            var list = args[i] switch
            {
                "--format" or "-f" => formats,
                "--output" or "-o" => outputs,
                "--sheet" => sheet,
                "--units" => units,
                "--fail-on" => failOn,
                "--catalog" => catalog,
                "--rules" => rules,
                _ => null,
            };
            if (list is not null && ++i < args.Length && IsWord(args[i]))
                list.Add(args[i]);
            else if (list is null && args[i] is "--verbose" or "--no-color" or "--as-expected"
                && !(i + 1 < args.Length && bool.TryParse(args[i + 1], out _)))
                (verbose, noColor, asExpected) =
                    (verbose || args[i] == "--verbose", noColor || args[i] == "--no-color", asExpected || args[i] == "--as-expected");
            else if (list is null && IsWord(args[i]))
                builds.Add(args[i]);
            else
                return null;
        }
        if (builds.Count == 0 || failOn.Count > 1 || sheet.Count > 1 || units.Count > 1 || !units.TrueForAll(u => u is "mm" or "inch")
            || !formats.TrueForAll(f => ReportList.Find(f) is not null)
            || !failOn.TrueForAll(s => s is "fail" or "measure" or "warn"))
            return null;
        return new CheckRequest
        {
            Builds = builds,
            Formats = formats,
            Outputs = outputs,
            Catalog = catalog,
            Rules = rules,
            Sheet = sheet.Count > 0 ? sheet[0] : null,
            Units = units.Count > 0 ? units[0] : null,
            FailOn = failOn.Count > 0 ? failOn[0] : "fail",
            AsExpected = asExpected,
            Verbose = verbose,
            NoColor = noColor,
        };
    }

    // Not an option, not a request for help.
    private static bool IsWord(string arg) => arg.Length > 0 && arg[0] != '-' && arg is not ("/h" or "/?");
}
