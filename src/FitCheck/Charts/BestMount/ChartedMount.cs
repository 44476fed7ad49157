using FitCheck.Catalog;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Values;

namespace FitCheck.Charts.BestMount;

/// <summary>What a chart asks of a spacer or a cup.</summary>
internal sealed class ChartedMount(Part part, Practice practice, int index)
{
    public Part Part => part;
    /// <summary>Its place in the list of all of its kind.</summary>
    public int Index { get; } = index;
    /// <summary>Those that carry every driver in the same way have the same number here, once it was worked out.</summary>
    public int Alike { get; set; } = index;
    public Adapter? Adapter => part as Adapter;
    public Cup? Cup => part as Cup;
    /// <summary>Of a spacer its opening, of a cup its hole.</summary>
    public LengthTerm Opening { get; } = LengthTerm.Of(part is Adapter a ? a.Opening : ((Cup)part).Hole);
    public LengthTerm OpeningMinor { get; } = LengthTerm.Of((part as Adapter)?.OpeningMinor);
    public LengthTerm OuterMinor { get; } = LengthTerm.Of((part as Adapter)?.OuterMinor);
    public LengthTerm Outer { get; } = LengthTerm.Of(part is Adapter a ? a.Outer : ((Cup)part).Outer);
    public LengthTerm Depth { get; } = LengthTerm.Of((part as Cup)?.Depth);
    public LengthTerm GrilleGap { get; } = LengthTerm.Of((part as Cup)?.GrilleGap);
    /// <summary>Of a cup.</summary>
    public LengthTerm Recess { get; } = LengthTerm.Of((part as Cup)?.FlangeRecess);
    /// <summary>Of a cup: the hole that it needs.</summary>
    public LengthTerm Cutout { get; } = LengthTerm.Of((part as Cup)?.Cutout);
    /// <summary>Of a spacer: that of its screws in the panel.</summary>
    public LengthTerm Circle { get; } = LengthTerm.Of((part as Adapter)?.VehicleHoles?.Circle);
    public LengthTerm Screw { get; } =
        LengthTerm.Of(MaterialFacts.Exact((part as Adapter)?.VehicleHoles?.Screw), practice.ScrewSize);
    public LengthTerm Tabs { get; } = LengthTerm.Of((part as Adapter)?.TabRadius);
    /// <summary>Of a spacer.</summary>
    public LengthTerm Thickness { get; } = LengthTerm.Of((part as Adapter)?.Thickness);
    public LengthTerm Tilt { get; } = LengthTerm.Of((part as Adapter)?.Tilt);

    /// <summary>
    /// Everything of it that is ever worked out together with a driver, in words: two of which these are the same carry every driver in the
    /// same way.
    /// </summary>
    public string Likeness() => string.Join('|',
        Opening, OpeningMinor, Outer, OuterMinor, Depth, GrilleGap, Recess, Cutout, Circle, Screw, Tabs, Thickness, Tilt,
        Adapter is { } spacer
            ? $"{spacer.Handed} {spacer.HasTabs} {spacer.HasDriverHoles} {spacer.HasVehicleHoles} {spacer.IsUniversal} "
                + string.Join(';', spacer.DriverHoles.Select(h => $"{HolePattern.Of(h)} {LengthTerm.Of(h.Slot)} {LengthTerm.Of(h.Screw)}"))
            : $"{Cup!.Cuttable} {Cup.IsUniversal} {string.Join(';', Cup.Fits.Select(Words))}");

    private static string Words(Fit fit) => $"{fit.Vehicle.Value}:{string.Join(',', fit.Positions.Select(p => p.Value))}";
}
