using System.Numerics;
using FitCheck.Drawings;
using FitCheck.Findings;

namespace FitCheck.Tests.Reports;

/// <summary>The drawings and curves of the sample.</summary>
internal static class SampleDrawings
{
    public static PositionDrawing LeftDoor => new()
    {
        Position = "left-door",
        Name = "Left front door",
        Place = "door",
        DriverName = "Heron 165 mm woofer",
        AdapterName = "Ring for Tern front door, tilted 6 deg",
        Body = [(0, 68), (14, 66), (34, 46), (46, 42), (46, 45), (65, 45)],
        FlangeRadius = 83,
        FlangeThickness = 3,
        FrontHeight = 7,
        Travel = 4.5,
        AdapterThickness = 8.1,
        TiltDeg = 6,
        AdapterOuterRadius = 92,
        AdapterOpeningRadius = 71,
        HoleRadius = 74,
        PanelThickness = 0.9,
        GrilleGap = 33.6,
        Obstructions = [new("glass", 58, 0, Moving: true), new("window rail", 77.6, 40, Moving: false),
            new("outer skin", 132, 0, Moving: false)],
        Clearances =
        [
            new("glass", "Magnet to the glass", -3.2, -5.2, -1.2, Status.Fail),
            new("back", "Magnet to the window rail", 16.4, 14.4, 18.4, Status.Pass),
            new("front", "Surround at full travel to the grille", 2.4, 0.8, 4, Status.Warn),
            new("hole", "Basket to the edge of the hole", 4.5, 3.4, 5.6, Status.Pass),
        ],
    };

    public static PositionDrawing RightDoor => LeftDoor with
    {
        Position = "right-door",
        Name = "Right front door",
        BodyIsAssumed = true,
        AdapterName = "Ring for Tern front door, tilted 6 deg",
        Body = [(0, 68), (42, 45), (65, 45)],
        Obstructions = [],
        GrilleGap = null,
        Clearances =
        [
            new("glass", "Magnet to the glass", null, null, null, Status.Measure),
            new("front", "Surround at full travel to the grille", null, null, null, Status.Measure),
            new("hole", "Basket to the edge of the hole", 6, 4.5, 7.5, Status.Pass),
            new("flange", "Flange to the trim ring", 3.1, 1.1, 5.1, Status.Pass),
        ],
    };

    public static PositionDrawing Sail => new()
    {
        Position = "left-sail",
        Name = "Left mirror triangle",
        Place = "sail",
        DriverName = "Heron 28 mm tweeter",
        CupName = "Tern mirror cup",
        Body = [(0, 21), (6, 21), (6, 17), (15, 17)],
        FlangeRadius = 24,
        FlangeThickness = 1.5,
        FrontHeight = 2.5,
        Travel = 0.3,
        HoleRadius = 22.1,
        PanelThickness = 3,
        GrilleGap = 9,
        Obstructions = [new("mirror foot", 22.5, 0, Moving: false)],
        Clearances =
        [
            new("back", "Body to the mirror's foot", 7.5, 6, 9, Status.Pass),
            new("front", "Dome to the grille", 4.7, 3.2, 6.2, Status.Pass),
            new("hole", "Body to the edge of the cup", 1.1, 0.4, 1.8, Status.Warn),
        ],
    };

    public static PositionDrawing Shelf => new()
    {
        Position = "rear-shelf",
        Name = "Rear shelf",
        Place = "shelf",
        DriverName = "Oval driver, 6 by 9 in",
        FlangeRadius = 84,
        Clearances = [new("back", "Magnet to the fuel tank", null, null, null, Status.Measure)],
    };

    public static LoadCurve LeftChannel => Curve("front-left", "Front left output", parallel: 1) with
    {
        RatedLoad = 4,
        AllowedOhm = 3.2,
        Status = Status.Pass,
        Tweeters = [new("left-sail", "Left mirror triangle", [.. Frequencies().Select(HighPass)], 3100, 2500)],
    };

    public static LoadCurve RearChannel => Curve("rear", "Rear output, both shelves", parallel: 2) with
    {
        RatedLoad = 4,
        AllowedOhm = 3.2,
        Status = Status.Fail,
        Estimated = true,
    };

    // A driver in free air: voice coil, its inductance and its resonance (Re 3.3 ohm, Le 0.25 mH, fs 68 Hz, Qms 4.2, Res 22 ohm).
    private static LoadCurve Curve(string channel, string name, int parallel)
    {
        List<(double Hz, double Ohm, double PhaseDeg)> points = [];
        foreach (var hz in Frequencies())
        {
            var motion = 22 / new Complex(1, 4.2 * ((hz / 68) - (68 / hz)));
            var z = (3.3 + new Complex(0, 2 * Math.PI * hz * 0.25e-3) + motion) / parallel;
            points.Add((hz, z.Magnitude, z.Phase * 180 / Math.PI));
        }
        var lowest = points.MinBy(p => p.Ohm);
        return new LoadCurve
        {
            Channel = channel,
            Name = name,
            Points = points,
            LowestOhm = lowest.Ohm,
            LowestHz = lowest.Hz,
            Status = Status.Pass
        };
    }

    private static IEnumerable<double> Frequencies() => Enumerable.Range(0, 121).Select(i => 20 * Math.Pow(1000, i / 120.0));

    // Butterworth, 12 dB an octave, 3.1 kHz.
    private static double HighPass(double hz) => -10 * Math.Log10(1 + Math.Pow(3100 / hz, 4));
}
