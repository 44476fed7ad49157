using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Outputs;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Geometry;
using FitCheck.Physics.Quantities;

namespace FitCheck.Drawings;

/// <summary>Takes the numbers of the drawings from what the facts were computed from.</summary>
internal static class Draw
{
    public static PositionDrawing Position(PositionContext c, IReadOnlyList<Finding> findings)
    {
        var (mounting, size) = (c.Position.Mounting, c.Size);
        var facts = new Dictionary<string, FactValue>(StringComparer.Ordinal);
        var sheet = new FactSheet();
        MountingFacts.Compute(c, sheet);
        CupFacts.Compute(c, sheet);
        foreach (var (name, value) in sheet.Values)
            facts[name] = value;
        var body = Body(c);
        return new PositionDrawing
        {
            Position = c.Position.Id,
            Name = c.Position.Name,
            Place = c.Position.Place,
            DriverName = c.Driver?.Name,
            AdapterName = c.Adapter?.Name,
            CupName = c.Cup?.Name,
            Body = body is null ? [] : [.. body.Points.Select(p => (p.Z * 1e3, p.R * 1e3))],
            BodyIsAssumed = size?.Profile is not { Count: >= 2 },
            FlangeRadius = Millimetres(size?.Flange) / 2,
            FlangeThickness = Millimetres(size?.FlangeThickness),
            FrontHeight = Millimetres(size?.FrontHeight),
            Travel = c.Driver is { IsTweeter: true } ? 0 : Millimetres(c.Driver?.Parameters?.Xmax),
            AdapterThickness = Millimetres(c.Adapter?.Thickness) ?? 0,
            TiltDeg = c.Tilt * 180 / Math.PI,
            AdapterOuterRadius = Millimetres(c.Adapter?.Outer) / 2,
            AdapterOpeningRadius = Millimetres(c.Adapter?.Opening) / 2,
            HoleRadius = Millimetres(c.Cup is { } cup ? cup.Hole : c.Position.Mounting.Cutout) / 2,
            PanelThickness = Millimetres(mounting.PanelThickness),
            GrilleGap = Millimetres(c.Cup is { } inCup ? inCup.GrilleGap : c.Position.Mounting.GrilleGap),
            AimHour = mounting.AimClock,
            Face = DrawFace.Of(c),
            Obstructions = Obstructions(c),
            Clearances = Clearances(c, facts, findings),
        };
    }

    public static LoadCurve Load(ChannelContext c, IReadOnlyList<Finding> findings)
    {
        var sweep = c.Sweep!;
        var lowest = c.Output.LowestLoad?.Si;
        var tweeters = new List<TweeterCurve>();
        for (var i = 0; i < c.Branches.Count; i++)
        {
            if (c.Branches[i].Placed?.Driver?.Part is not { IsTweeter: true } tweeter)
                continue;
            var db = sweep.LevelDb(i).Select((level, n) => level + (20 * Math.Log10(c.ActiveGain(sweep.States[n].Hz)))).ToList();
            var beforeLowPass = sweep.LevelDb(i)
                .Select((level, n) => level + (20 * Math.Log10(c.HighPassGain(sweep.States[n].Hz)))).ToList();
            var corner = Physics.Electrical.Filters.HighPass.Of([.. sweep.States.Select(s => s.Hz)], beforeLowPass).CornerHz;
            tweeters.Add(
                new TweeterCurve(c.Branches[i].Position.Id, c.Branches[i].Position.Name, db,
                    c.Branches[i].HighPasses.Count > 0 ? corner : null, tweeter.LowestCrossover?.Si));
        }
        return new LoadCurve
        {
            Channel = c.Channel.Id,
            Name = $"Output {c.Channel.Id} of {c.Output.Name}",
            Points = sweep.Points,
            LowestOhm = sweep.MinOhm,
            LowestHz = sweep.MinHz,
            RatedLoad = lowest,
            AllowedOhm = 0.8 * lowest,
            Estimated = c.Unsure.Count > 0,
            GainVolts =
                c.Channel.Device.Part is Catalog.Amplifier && GainFacts.Target(c) is { Unsure.Count: 0, Number: { } gain } ? gain.Value
                    : null,
            Status = StatusWords.Worst(
                findings.Where(f => f.Position == c.Channel.Id && f.Waived is null && f.Rule.StartsWith("load/", StringComparison.Ordinal))
                    .Select(f => f.Status)),
            Tweeters = tweeters,
        };
    }

    private static BodyProfile? Body(PositionContext c)
    {
        var size = c.Size;
        if (size?.Profile is { Count: >= 2 } points && BodyProfile.WhatIsWrong(points) is null)
            return BodyProfile.Of(points);
        return size is { Cutout: { } cutout, Depth: { } depth }
            ? BodyProfile.FromSheet(cutout.Si / 2, depth.Si,
            size.MagnetHeight is null || size.MagnetDiameter is null ? null : Math.Min(size.MagnetDiameter.Si, cutout.Si) / 2,
                size.MagnetDiameter is null || size.MagnetHeight is null ? null : Math.Min(size.MagnetHeight.Si, depth.Si))
            : null;
    }

    private static List<DrawnObstruction> Obstructions(PositionContext c)
    {
        if (c.Cup is { } cup)
            return cup.Depth is { } floor ? [new DrawnObstruction("bottom of the cup", floor.Si * 1e3, 0, false)] : [];
        var things = c.Position.Mounting.Obstructions.Where(o => o.Depth is not null)
            .Select(o => new DrawnObstruction(o.Name, o.Depth!.Si * 1e3, (o.FromRadius?.Si ?? 0) * 1e3, o.Moving == true)
            { Hours = o is { FromClock: { } from, ToClock: { } to } && !new ClockSector(from, to).IsWhole ? (from, to) : null }).ToList();
        if (c.Position.Mounting.Depth is { } depth)
            things.Add(new DrawnObstruction("behind the panel", depth.Si * 1e3, 0, false));
        return things;
    }

    private static List<Clearance> Clearances(PositionContext c, Dictionary<string, FactValue> facts, IReadOnlyList<Finding> findings)
    {
        var all = new List<Clearance>();
        Add("back", "behind the driver", c.Cup is null ? MountingFacts.DepthMargin : CupFacts.CupDepthMargin);
        Add("glass", "to the glass", MountingFacts.GlassMargin);
        Add("front", "to the grille", c.Cup is null ? MountingFacts.FrontMargin : CupFacts.CupGrilleMargin);
        Add("hole", "around the body", c.Cup is null ? MountingFacts.HoleMargin : CupFacts.CupHoleGap);
        Add("flange", "around the flange", MountingFacts.FlangeMargin);
        return all;

        void Add(string kind, string label, Fact fact)
        {
            if (!facts.TryGetValue(fact.Name, out var value) || c.Driver is null)
                return;
            var status = StatusWords.Worst(findings.Where(f => f.Position == c.Position.Id && f.Fact == fact.Name).Select(f => f.Status));
            if (value.Number is null)
                status = Status.Measure;
            all.Add(new Clearance(kind, label, value.Number?.Value * 1e3, value.Number?.Low * 1e3, value.Number?.High * 1e3, status));
        }
    }

    private static double? Millimetres(Catalog.Figure? figure) =>
        figure is { Quantity.Dimension: var d } && d == Dimension.Metre ? figure.Si * 1e3 : null;
}
