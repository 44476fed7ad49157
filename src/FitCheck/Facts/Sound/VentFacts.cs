using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Sound;

/// <summary>A vented box, and what keeps away from its driver what lies below the tuning.</summary>
internal static class VentFacts
{
    public static readonly FactGroup Declarations = new(Subject.Position);

    public static readonly TruthFact IsVented = Declarations.Truth("is_vented", "The box has a port.", Reads.Box.Itself)
        .Saying("no vented box", "a vented box");
    public static readonly NumberFact PortTuning = Declarations.Number(
        "port_tuning", Dimension.Hertz, "Frequency to which the port of the box is tuned.",
        Reads.Box.Itself);
    public static readonly NumberFact SubsonicRatio = Declarations.Number(
        "subsonic_ratio", Dimension.One,
        "Where the filters let the driver begin (3 dB down), over the tuning of the port; 0 where nothing keeps deep bass away.",
        Reads.Box.Itself, Reads.Network.Itself, Reads.Amplification.Itself);

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        sheet.Set(IsVented, c.Placed.Port is not null);
        if (c.Placed.Port is not { Si: > 0 } port)
            return;
        sheet.Set(PortTuning, port, "tuning of the port");
        if (c is not { Driver: not null, Channel: { } channel })
            return;
        var filtered = channel.HighPass is not null
            || channel.Channel.InLine.Concat(c.Placed.Sundries).Any(s => s.Part.Type == "capacitor");
        if (!filtered)
            sheet.Set(SubsonicRatio, FactValue.Of(Dimension.One, 0) with { Data = [new Datum("tuning of the port", port)] });
        else if (BandFacts.Farthest([c], highest: false, b => b.Band.LowHz) is { Number: { } begins } low)
            sheet.Set(SubsonicRatio, FactValue.Of(Dimension.One, begins * Uncertain.Exact(1 / port.Si)) with
            {
                Data = [new Datum("tuning of the port", port)],
                Unsure = low.Unsure,
            });
        else
            sheet.Set(SubsonicRatio, FactValue.Unknown(FactType.Number(Dimension.One), [.. channel.Unsure]));
    }
}
