using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.Catalog;

/// <summary>From where to where an electronic filter can be set; without ends, it is written down that there is none.</summary>
internal sealed record FilterRange(Figure? Lowest, Figure? Highest, Location At)
{
    /// <summary>The word for something that a device does not have.</summary>
    internal const string None = "none";

    // 3.5 kHz and 3500 Hz are the same corner.
    private const double Rounding = 1e-9;

    internal static FilterRange? Read(Fields f, string key)
    {
        if (f.Text(key) is { Value: None } none)
            return new FilterRange(null, null, none.At);
        if (f.Figures(key, Dimension.Hertz) is not [var lowest, var highest])
            return null;
        FigureOrder.Range(f, lowest, highest);
        return new FilterRange(lowest, highest, lowest.At);
    }

    public bool IsNone => Lowest is null || Highest is null;

    /// <summary>Whether a corner can be set; null when an end is only a guess.</summary>
    public bool? Holds(Figure corner)
    {
        if (Lowest is not { } lowest || Highest is not { } highest)
            return false;
        if (lowest.IsEstimated || highest.IsEstimated)
            return null;
        return corner.Si >= lowest.Si * (1 - Rounding) && corner.Si <= highest.Si * (1 + Rounding);
    }
}

/// <summary>The electronic filters of a source unit, a line converter or an amplifier.</summary>
/// <param name="Any">Whether it has filters at all; null when nobody wrote it.</param>
/// <param name="HighPass">Its high-pass; null when nobody wrote how far it goes.</param>
/// <param name="LowPass">Its low-pass.</param>
/// <param name="Slopes">The slopes of both, in dB an octave; null when nobody wrote them.</param>
internal sealed record DeviceFilters(bool? Any, FilterRange? HighPass, FilterRange? LowPass, IReadOnlyList<Figure>? Slopes)
{
    internal static DeviceFilters Read(Fields f) =>
        new(f.Truth("filters"), FilterRange.Read(f, "high_pass_range"), FilterRange.Read(f, "low_pass_range"),
            f.Map["filter_slopes"] is null ? null : f.Figures("filter_slopes", Dimension.Slope));

    /// <summary>The filters of a part; null for one that is no device.</summary>
    public static DeviceFilters? Of(Part part) =>
        part switch { SourceUnit s => s.Filters, LineConverter c => c.Filters, Amplifier a => a.Filters, _ => null };

    public FilterRange? Range(bool high) => high ? HighPass : LowPass;

    /// <summary>Whether it can make a filter with this corner; null when that is not recorded.</summary>
    public bool? Makes(Figure corner, bool high) => Range(high) is { } range ? range.Holds(corner) : Any == false ? false : null;

    /// <summary>Whether its filters can be as steep as this, dB an octave; null when that is not recorded.</summary>
    public bool? Has(int slope) =>
        Slopes is not { } slopes ? Any == false ? false : null
        : slopes.Any(s => !s.IsEstimated && Math.Abs(s.Si - slope) < 0.5) ? true
        : slopes.Any(s => s.IsEstimated) ? null : false;
}
