using FitCheck.Facts.Contexts;
using FitCheck.Facts.Fitting;

namespace FitCheck.Drawings;

/// <summary>Takes the numbers of the face's drawing from what the facts about screw holes were computed from.</summary>
internal static class DrawFace
{
    public static FaceDrawing? Of(PositionContext c)
    {
        if (c.Driver is not { IsTweeter: false } driver || c.Cup is not null || c.Position.Mounting.Holes is not { } holes)
            return null;
        var fit = HoleFacts.PanelFit(c);
        var panel = new List<DrawnHole>();
        for (var i = 0; i < holes.Angles.Count; i++)
            panel.Add(new DrawnHole(holes.Angles[i], holes.Circle.Si * 500, fit?.Match.Meets[i] == true));
        return new FaceDrawing
        {
            CutoutRadius = c.Position.Mounting.Cutout?.Si * 500,
            IsOval = c.Position.Mounting.CutoutMinor is not null || c.Adapter?.OpeningMinor is not null,
            IsDriverOval = driver.Oval,
            PanelScrew = holes.Screw?.Si * 1e3,
            SpacerRadius = c.Adapter?.Outer?.Si * 500,
            FlangeRadius = driver.Dimensions?.Flange?.Si * 500,
            Panel = panel,
            Driver = OfDriver(c),
            AimHour = c.Tilt == 0 ? null : c.Position.Mounting.AimClock,
            TiltDeg = Math.Abs(c.Tilt) * 180 / Math.PI,
        };
    }

    private static List<DrawnHole> OfDriver(PositionContext c)
    {
        var drawn = new List<DrawnHole>();
        if (HoleFacts.DriverFit(c) is not { } fit)
            return drawn;
        var turn = HoleFacts.DriverTurn(c, fit) * 180 / Math.PI;
        for (var i = 0; i < fit.Second.Angles.Count; i++)
            drawn.Add(new DrawnHole(fit.Second.Angles[i] + turn, fit.Second.Circle.Si * 500, fit.Match.Used[i]));
        return drawn;
    }
}
