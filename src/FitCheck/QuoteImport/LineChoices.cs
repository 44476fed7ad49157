using FitCheck.Catalog;
using FitCheck.Foundation.Problems;

namespace FitCheck.QuoteImport;

/// <summary>What the caller said of single lines: `--as LINE=ID` which part it is, `--skip LINE` that it is left out.</summary>
internal sealed class LineChoices
{
    private readonly Dictionary<int, Part> _as = [];
    private readonly HashSet<int> _skipped = [];

    /// <summary>Reads the options; a line that is no number and an id that is no part are told.</summary>
    public static LineChoices Read(IReadOnlyList<string> asOptions, IReadOnlyList<int> skipped, PartsCatalog catalog, ProblemList problems)
    {
        var choices = new LineChoices();
        choices._skipped.UnionWith(skipped);
        var here = new Location("--as", 0, 0);
        foreach (var option in asOptions)
        {
            var (number, id) = option.Split('=', 2) is [var left, var right] ? (left.Trim(), right.Trim()) : (option, "");
            if (!int.TryParse(number, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture,
                out var line)
                || id.Length == 0)
                problems.Error(here, $"expected `LINE=ID`, such as `7=orrin-c165`, found `{option}`");
            else if (catalog.Find(id) is not Part part)
                problems.Error(here, $"no part `{id}` in the catalog{Nearest.Hint(id, catalog.Ids)}", ProblemKind.UnknownName);
            else if (!choices._as.TryAdd(line, part))
                problems.Error(here, $"line {line} is said to be two parts");
        }
        foreach (var line in skipped.Where(choices._as.ContainsKey))
            problems.Error(here, $"line {line} is said to be a part, and to be left out");
        return choices;
    }

    public Part? Of(int line) => _as.GetValueOrDefault(line);

    public bool IsSkipped(int line) => _skipped.Contains(line);

    /// <summary>Tells of lines that the list has not.</summary>
    public void TellUnused(IReadOnlySet<int> lines, ProblemList problems)
    {
        foreach (var line in _as.Keys.Except(lines).Order())
            problems.Error(new Location("--as", 0, 0), $"the list has nothing in line {line}");
        foreach (var line in _skipped.Except(lines).Order())
            problems.Error(new Location("--skip", 0, 0), $"the list has nothing in line {line}");
    }
}
