using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Devices;
using FitCheck.Facts.Values;
using FitCheck.Facts.Wiring;
using FitCheck.Findings;

namespace FitCheck.Drawings;

/// <summary>Takes the wiring diagrams from the build, and the figures in them from the facts.</summary>
internal static class DrawWiring
{
    public static WiringDiagram Channel(ChannelContext c)
    {
        var ends = c.Channel.Feeds.Where(p => p.Driver is not null)
            .Select(p =>
            new WireEnd(p.Position.Name, p.Driver!.Part.Name, WiringFacts.Path(p), IsTweeter(p.Position, p.Driver.Part), IsFactory: false))
                .ToList();
        ends.AddRange(
            c.Channel.Leftover.Select(
                p => new WireEnd(p.Name, "factory driver, stays", "in parallel on the factory wire", IsTweeter(p, null), IsFactory: true)));
        return new WiringDiagram(c.Channel.Id, $"Output {c.Channel.Id} of {c.Output.Name}", c.Output.Name, c.Channel.Outputs,
            [.. c.Channel.InLine.Select(s => s.Part.Name)], c.Channel.Crossover?.Part.Name, ends);
    }

    public static SupplyDiagram? Supply(DeviceFacts devices, IReadOnlyList<FactTable> tables, IReadOnlyList<Finding> findings)
    {
        if (devices.Runs.Count == 0)
            return null;
        return new SupplyDiagram(devices.Main is { } main ? Leg(main, DeviceFacts.MainCable) : null,
            devices.Main?.Build.Supply.Distribution?.Part.Name,
            [.. devices.Runs.Select(r => Leg(r, r.Amplifier!.Device.Id))]);

        SupplyLeg Leg(SupplyRunContext c, string key)
        {
            var run = c.Run;
            var drop = tables.FirstOrDefault(t => t.Subject == Subject.Device && t.Key == key)?.Of(SupplyFacts.VoltageDrop);
            return new SupplyLeg
            {
                Name = c.Name,
                DemandA = c.Demand is { Unsure.Count: 0, Number: { } demand } ? demand.Value : null,
                Gauge = Gauge(run.Cable),
                CopperClad = run.Cable?.Part.CopperClad == true,
                LengthM = run.Length?.Si,
                FuseA = run.Fuse?.Part.Current?.Si,
                FuseDistanceMm = run.FuseDistance?.Si * 1e3,
                DropV = drop is { Unsure.Count: 0 } ? drop.Number?.Value : null,
                GroundGauge = Gauge(run.Ground),
                GroundLengthM = run.GroundLength?.Si,
                Status = StatusWords.Worst(
                    findings.Where(f => f.Position == key && f.Waived is null && f.Rule.StartsWith("supply/", StringComparison.Ordinal))
                        .Select(f => f.Status)),
            };
        }
    }

    private static string? Gauge(Chosen<WiringPart>? cable) =>
        cable?.Part.Gauge is { } gauge ? Physics.Quantities.WireGauge.NameOf(gauge.Si) ?? gauge.ToString() : null;

    private static bool IsTweeter(Position position, Driver? driver) => position.Role == "tweeter" || driver?.IsTweeter == true;
}
