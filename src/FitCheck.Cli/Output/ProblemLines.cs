using FitCheck.Foundation.Problems;
using FitCheck.Reports.Wording;

namespace FitCheck.Cli.Output;

/// <summary>Prints problems, one a line, in the form that editors and continuous integration understand.</summary>
internal static class ProblemLines
{
    /// <summary>Prints them all. Returns the status for invalid input when one is an error.</summary>
    public static int Tell(IEnumerable<Problem> problems, TextWriter output)
    {
        var status = ExitStatus.Good;
        foreach (var problem in problems)
        {
            output.WriteLine(PlainText.Line(problem.ToString()));
            if (problem.Severity == Severity.Error)
                status = ExitStatus.BadInput;
        }
        return status;
    }
}
