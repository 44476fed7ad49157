using FitCheck.Findings;

namespace FitCheck.Reports.Wording;

/// <summary>How many findings of a build have each status; waived ones are counted apart.</summary>
internal readonly record struct Tally(int Fail, int Measure, int Warn, int Pass, int Waived)
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

    /// <summary>Counts once what is told once, whatever number of findings it stands for; passes and what is waived stay single.</summary>
    public static Tally OfPoints(IReadOnlyList<Finding> findings) =>
        Of([.. Told.Of(findings.Where(f => f.Status != Status.Pass && f.Waived is null)).Select(t => t.First),
            .. findings.Where(f => f.Status == Status.Pass || f.Waived is not null)]);

    public int this[Status status] => status switch
    {
        Status.Fail => Fail,
        Status.Measure => Measure,
        Status.Warn => Warn,
        _ => Pass,
    };

    /// <summary>`20 checks: 2 fail, 1 measure, 3 warn, 14 pass; 1 waived`; statuses that nothing has are left out.</summary>
    public override string ToString()
    {
        var parts = new List<string>(5);
        Add(Fail, Status.Fail);
        Add(Measure, Status.Measure);
        Add(Warn, Status.Warn);
        Add(Pass, Status.Pass);
        var counts = $"{Sentences.Count(Checks, "check", "checks")}{(parts.Count > 0 ? ": " : "")}{string.Join(", ", parts)}";
        return Waived > 0 ? $"{counts}; {Figures.Whole(Waived)} waived" : counts;

        void Add(int count, Status status)
        {
            if (count > 0)
                parts.Add($"{Figures.Whole(count)} {status.Word()}");
        }
    }
}
