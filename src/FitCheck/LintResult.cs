using System.Globalization;
using System.Text;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;

namespace FitCheck;

/// <summary>The answer to `lint`: what is wrong, in file order, and how many files were read.</summary>
public sealed record LintResult(IReadOnlyList<Problem> Problems, int Files)
{
    /// <summary>The rules that were read, in ordinal order of their ids.</summary>
    public IReadOnlyList<RuleHelp> Rules { get => RulesWhenAsked.Value; init => RulesWhenAsked = new(value); }

    /// <summary>The rules, in ordinal order of their ids, read when a report asks.</summary>
    internal Lazy<IReadOnlyList<RuleHelp>> RulesWhenAsked { get; init; } = new([]);

    /// <summary>How many of the problems make an input unusable.</summary>
    public int Errors => Problems.Count(p => p.Severity == Severity.Error);

    /// <summary>How many do not.</summary>
    public int Warnings => Problems.Count - Errors;

    /// <summary>
    /// Names for the problems, in their order, that stay when lines move: from file, code and subject; of several that agree in these, the
    /// first, the second and so on in the file.
    /// </summary>
    /// <param name="shown">How a file is called, so that the name is the same in another folder.</param>
    public IReadOnlyList<string> Fingerprints(Func<string, string> shown)
    {
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        var names = new List<string>(Problems.Count);
        foreach (var problem in Problems)
        {
            var name = string.Join('\n', problem.Code, shown(problem.At.File), problem.Subject ?? WithoutLines(problem.Message));
            var occurrence = seen[name] = seen.GetValueOrDefault(name) + 1;
            names.Add(Sha256.Of(Encoding.UTF8.GetBytes($"{name}\n{occurrence.ToString(CultureInfo.InvariantCulture)}"))[..16]);
        }
        return names;
    }

    // A message may say "the first is in line 12".
    private static string WithoutLines(string message)
    {
        const string word = "in line ";
        var start = message.IndexOf(word, StringComparison.Ordinal);
        if (start < 0)
            return message;
        var end = start += word.Length;
        while (end < message.Length && char.IsAsciiDigit(message[end]))
            end++;
        return message[..start] + WithoutLines(message[end..]);
    }
}
