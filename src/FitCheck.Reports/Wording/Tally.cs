using FitCheck.Findings;

namespace FitCheck.Reports.Wording;

/// <summary>
/// How many points of a build have each status: what is told once counts once, whatever number of places it is about, but for passes, which
/// are counted check by check. Waived points are counted apart.
/// </summary>
internal readonly record struct Tally(int Fail, int Measure, int Warn, int Pass, int Waived)
{
    public int Checks => Fail + Measure + Warn + Pass;

    private static Tally Of(IEnumerable<Finding> findings)
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

    /// <summary>What a person counts who reads the report; every figure on a page is this one.</summary>
    public static Tally OfPoints(IReadOnlyList<Finding> findings) =>
        Of([.. Told.Of(findings.Where(f => f.Status != Status.Pass && f.Waived is null)).Select(t => t.First),
            .. Told.Of(findings.Where(f => f.Waived is not null)).Select(t => t.First),
            .. findings.Where(f => f.Status == Status.Pass && f.Waived is null)]);

    public int this[Status status] => status switch
    {
        Status.Fail => Fail,
        Status.Measure => Measure,
        Status.Warn => Warn,
        _ => Pass,
    };

    /// <summary>`2 fail, 1 measure, 3 warn; 14 checks pass; 1 waived`; what nothing has is left out.</summary>
    public override string ToString()
    {
        var parts = new List<string>(3);
        Add(Fail, Status.Fail);
        Add(Measure, Status.Measure);
        Add(Warn, Status.Warn);
        string[] all = [string.Join(", ", parts), Pass > 0 || Checks == 0 ? $"{Sentences.Count(Pass, "check passes", "checks pass")}" : "",
            Waived > 0 ? $"{Figures.Whole(Waived)} waived" : ""];
        return string.Join("; ", all.Where(a => a.Length > 0));

        void Add(int count, Status status)
        {
            if (count > 0)
                parts.Add($"{Figures.Whole(count)} {status.Word()}");
        }
    }
}
