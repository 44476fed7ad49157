using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Rules.Files;

/// <summary>One figure of `practice.yaml`, and where it goes.</summary>
/// <param name="Name">Its key.</param>
/// <param name="Dimension">Of the number.</param>
/// <param name="IsRange">It is two bounds, else one number.</param>
/// <param name="Put">Enters it.</param>
internal sealed record PracticeFigure(string Name, Dimension Dimension, bool IsRange, Func<Practice, Between, Practice> Put)
{
    /// <summary>Every figure that the file has, in its order.</summary>
    public static IReadOnlyList<PracticeFigure> All { get; } =
    [
        One("running_voltage", Dimension.Volt, (p, x) => p with { RunningVoltage = x }),
        One("music_average", Dimension.One, (p, x) => p with { MusicAverage = x }),
        One("efficiency_class_d", Dimension.One, (p, x) => p with { EfficiencyClassD = x }),
        One("efficiency_other_classes", Dimension.One, (p, x) => p with { EfficiencyOtherClasses = x }),
        Two("output_stage_power", Dimension.Watt, (p, b) => p with { OutputStagePower = b }),
        One("rating_reach", Dimension.One, (p, x) => p with { RatingReach = x }),
        Two("rating_at_low_distortion", Dimension.One, (p, b) => p with { RatingAtLowDistortion = b }),
        Two("rating_with_all_channels", Dimension.One, (p, b) => p with { RatingWithAllChannels = b }),
        One("usual_rated_load", Dimension.Ohm, (p, x) => p with { UsualRatedLoad = x }),
        Two("dc_resistance_share", Dimension.One, (p, b) => p with { DcResistanceShare = b }),
        One("least_inductance", Dimension.Henry, (p, x) => p with { LeastInductance = x }),
        One("coaxial_tweeter_share", Dimension.One, (p, x) => p with { CoaxialTweeterShare = x }),
        Two("cone_radius_share", Dimension.One, (p, b) => p with { ConeRadiusShare = b }),
        Two("subwoofer_resonance", Dimension.Hertz, (p, b) => p with { Subwoofer = p.Subwoofer with { Fs = b } }),
        Two("subwoofer_qes", Dimension.One, (p, b) => p with { Subwoofer = p.Subwoofer with { Qes = b } }),
        Two("subwoofer_qms", Dimension.One, (p, b) => p with { Subwoofer = p.Subwoofer with { Qms = b } }),
        Two("woofer_resonance", Dimension.Hertz, (p, b) => p with { Woofer = p.Woofer with { Fs = b } }),
        Two("woofer_qes", Dimension.One, (p, b) => p with { Woofer = p.Woofer with { Qes = b } }),
        Two("woofer_qms", Dimension.One, (p, b) => p with { Woofer = p.Woofer with { Qms = b } }),
        Two("tweeter_resonance", Dimension.Hertz, (p, b) => p with { Tweeter = p.Tweeter with { Fs = b } }),
        Two("tweeter_qes", Dimension.One, (p, b) => p with { Tweeter = p.Tweeter with { Qes = b } }),
        Two("tweeter_qms", Dimension.One, (p, b) => p with { Tweeter = p.Tweeter with { Qms = b } }),
        One("factory_wire_share", Dimension.One, (p, x) => p with { FactoryWireShare = x }),
        One("filter_slope", Dimension.Slope, (p, x) => p with { FilterSlope = x }),
        Two("cable_insulation", Dimension.Kelvin, (p, b) => p with { CableInsulation = b }),
        One("conductor_temperature", Dimension.Kelvin, (p, x) => p with { ConductorTemperature = x }),
        One("ground_length", Dimension.Metre, (p, x) => p with { GroundLength = x }),
        One("panel_thickness", Dimension.Metre, (p, x) => p with { PanelThickness = x }),
        One("screw_size", Dimension.Metre, (p, x) => p with { ScrewSize = x }),
        One("screw_hole_clearance", Dimension.Metre, (p, x) => p with { ScrewHoleClearance = x }),
        One("cable_bend", Dimension.Metre, (p, x) => p with { CableBend = x }),
        One("seat_offset", Dimension.Metre, (p, x) => p with { SeatOffset = x }),
    ];

    private static PracticeFigure One(string name, Dimension dimension, Func<Practice, double, Practice> put) =>
        new(name, dimension, IsRange: false, (p, b) => put(p, b.Low));

    private static PracticeFigure Two(string name, Dimension dimension, Func<Practice, Between, Practice> put) =>
        new(name, dimension, IsRange: true, put);
}
