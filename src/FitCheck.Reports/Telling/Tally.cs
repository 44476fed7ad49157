using FitCheck.Findings;

namespace FitCheck.Reports.Telling;

/// <summary>How many findings of a build have each status; waived ones are counted apart.</summary>
public readonly record struct Tally(int Fail, int Measure, int Warn, int Pass, int Waived)
{
    public int Checks => Fail + Measure + Warn + Pass;

    public static Tally Of(IReadOnlyList<Finding> findings)
    {
        int fail = 0, measure = 0, warn = 0, pass = 0, waived = 0;
        foreach (var finding in findings)
        {
            if (finding.Waived is not null)
                waived++;
            else if (finding.Status == Status.Fail)
                fail++;
            else if (finding.Status == Status.Measure)
                measure++;
            else if (finding.Status == Status.Warn)
                warn++;
            else
                pass++;
        }
        return new(fail, measure, warn, pass, waived);
    }

    public int this[Status status] => status switch
    {
        Status.Fail => Fail,
        Status.Measure => Measure,
        Status.Warn => Warn,
        _ => Pass,
    };

    /// <summary>`2 fail, 1 measure, 3 warn, 14 pass, 1 waived`; statuses that nothing has are left out.</summary>
    public override string ToString()
    {
        var parts = new List<string>(5);
        Add(Fail, Status.Fail.Word());
        Add(Measure, Status.Measure.Word());
        Add(Warn, Status.Warn.Word());
        Add(Pass, Status.Pass.Word());
        Add(Waived, "waived");
        return string.Join(", ", parts);

        void Add(int count, string word)
        {
            if (count > 0)
                parts.Add($"{Figures.Whole(count)} {word}");
        }
    }
}
