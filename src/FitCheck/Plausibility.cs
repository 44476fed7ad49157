using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Findings;
using FitCheck.Rules;
using FitCheck.Yaml;

namespace FitCheck;

/// <summary>Judges the entries of a catalog by the rules about entries: what a wrong figure looks like. Nothing is parsed here; the work grows with the number of entries.</summary>
public static class Plausibility
{
    /// <summary>What the rules find implausible, each at the figure that it is about, in no particular order.</summary>
    public static IEnumerable<Problem> Of(PartsCatalog catalog, RuleSet rules)
    {
        ArgumentNullException.ThrowIfNull(catalog);
        ArgumentNullException.ThrowIfNull(rules);
        var asked = rules.Rules.Where(r => r.Subject == Subject.Driver).ToList();
        foreach (var driver in catalog.IdsOf("driver").Select(catalog.Find).OfType<Driver>())
        {
            var table = FactRegistry.Of(driver);
            foreach (var finding in asked.Select(r => Judge.Evaluate(r, table, driver.Id)).OfType<Finding>().Where(f => f.Status is Status.Warn or Status.Fail))
                yield return Told(finding, driver.At);
        }
    }

    // The first datum of the entry is the figure that is doubted; what else the finding rests on is told beside it.
    private static Problem Told(Finding finding, Location entry)
    {
        var at = finding.Related.FirstOrDefault(r => r.At.File == entry.File)?.At ?? entry;
        return new Problem(at, Severity.Warning, finding.Message)
        {
            Rule = finding.Rule,
            Subject = finding.Position,
            Related = [.. finding.Related.Where(r => r.At != at)],
        };
    }
}
