using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Physics.Acoustics;

namespace FitCheck.Facts.Contexts;

/// <summary>One of the corners of all that resonance and Q can be where no sheet gives them: each at its least or its most.</summary>
internal readonly record struct ResonanceCorner(bool HighFs, bool HighQes, bool HighQms)
{
    /// <summary>Every corner.</summary>
    public static IReadOnlyList<ResonanceCorner> All { get; } =
        [.. Enumerable.Range(0, 8).Select(i => new ResonanceCorner((i & 1) > 0, (i & 2) > 0, (i & 4) > 0))];

    /// <summary>True where something of it is missing on a driver's sheet.</summary>
    public static bool IsMissing(Driver driver) => driver.Parameters is not { Fs: not null, Qes: not null, Qms: not null };

    /// <summary>What is missing, for the maker to tell: the facts are judged between bounds.</summary>
    public static Unsure Ask(Driver driver)
    {
        var p = driver.Parameters;
        string[] missing = [.. p?.Fs is null ? ["fs"] : Array.Empty<string>(), .. p?.Qes is null ? ["Qes"] : Array.Empty<string>(),
            .. p?.Qms is null ? ["Qms"] : Array.Empty<string>()];
        return new Unsure($"{string.Join(", ", missing)} of {driver.Name}",
            "Ask the maker for the parameters, and write them into its entry under `parameters`.", Estimated: false)
        { IsBounded = true, IsForMaker = true };
    }

    /// <summary>The driver in this corner; what its sheet gives stays.</summary>
    public DriverModel Model(Driver driver, double resistance, double? inductance, Practice practice)
    {
        var (qes, qms) = Qs(driver, practice);
        return new DriverModel(resistance, inductance, Fs(driver, practice), qms, qes);
    }

    /// <summary>Its resonance in free air in this corner, Hz.</summary>
    public double Fs(Driver driver, Practice practice) =>
        driver.Parameters?.Fs?.Si ?? Of(practice.ResonanceOf(driver.Type).Fs, HighFs);

    /// <summary>Its electrical and its mechanical Q.</summary>
    public (double Qes, double Qms) Qs(Driver driver, Practice practice)
    {
        var (p, bounds) = (driver.Parameters, practice.ResonanceOf(driver.Type));
        return (p?.Qes ?? Of(bounds.Qes, HighQes), p?.Qms ?? Of(bounds.Qms, HighQms));
    }

    private static double Of(Between bounds, bool high) => high ? bounds.High : bounds.Low;
}
