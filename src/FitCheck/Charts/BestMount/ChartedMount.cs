using FitCheck.Catalog;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Values;

namespace FitCheck.Charts.BestMount;

/// <summary>What a chart asks of a spacer or a cup.</summary>
internal sealed class ChartedMount(Part part, Practice practice, int index)
{
    public Part Part => part;
    /// <summary>Its place in the list of all of its kind.</summary>
    public int Index => index;
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
}
