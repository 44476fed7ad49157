using FitCheck.Builds.Readable;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Wiring;

/// <summary>
/// Whether the harness adapter reaches from the factory plug to the driver: its length and that of the driver's own leads, against the
/// plug's distance from the terminals of a driver on the panel and the thickness of the spacer that carries the driver away from there.
/// </summary>
internal static class LeadFacts
{
    private const string Rule = "Measure along the route of the lead with a tape.";

    public static readonly FactGroup Declarations = new(Subject.Position);

    public static readonly NumberFact LeadLength = Declarations.Number(
        "lead_length", Dimension.Metre, "Length of the harness adapter, with the driver's own leads.",
        Reads.Driver["terminals.length"], Reads.Adapter.Itself, Reads.Harness["length"], Reads.Wire.Itself, Reads.Place.Itself);
    public static readonly NumberFact LeadNeeded = Declarations.Number(
        "lead_needed", Dimension.Metre, "Route from the factory plug to the driver's terminals.",
        Reads.Driver.Itself, Reads.Adapter["thickness"], Reads.Harness.Itself, Reads.Wire.Itself, Reads.Place["connector.distance"]);
    public static readonly NumberFact LeadSlack = Declarations.Number(
        "lead_slack", Dimension.Metre, "Length by which the lead exceeds its route; negative when it does not reach.",
        Reads.Driver["terminals.length"], Reads.Adapter["thickness"], Reads.Harness["length"], Reads.Wire.Itself,
        Reads.Place["connector.distance"]);

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        if (c.Placed is not { Driver.Part: { } driver, Harness.Part: { } harness, NewWire: null })
            return;
        var lengths = new Stack(Dimension.Metre);
        sheet.Set(LeadLength, lengths.Of(Lead(lengths)));
        var ways = new Stack(Dimension.Metre);
        sheet.Set(LeadNeeded, ways.Of(Way(ways)));
        var slack = new Stack(Dimension.Metre);
        var (lead, way) = (Lead(slack), Way(slack));
        sheet.Set(LeadSlack, slack.Of(v => lead(v) - way(v)));

        Func<double[], double> Lead(Stack stack)
        {
            var adapter = stack.Need($"length of {harness.Name}", Rule, harness.Length, DatumKey.In(harness, "length"));
            if (driver.Terminals is null)
                stack.Need($"length of the leads of {driver.Name}, if it has any", Rule, null);
            if (driver.Terminals is not { Type: "leads" } leads)
                return v => v[adapter];
            var own = stack.Need($"length of the leads of {driver.Name}", Rule, leads.Length, DatumKey.In(driver, "terminals.length"));
            return v => v[adapter] + v[own];
        }

        Func<double[], double> Way(Stack stack)
        {
            var plug = stack.Need(c.AtPosition("distance from the factory plug to the driver's terminals"), Rule, c.Position.PlugDistance,
                c.Here("connector.distance"));
            if (c.Adapter is not { } spacer)
                return v => v[plug];
            var thickness = stack.Need("thickness of the spacer", "Measure with a calliper.", spacer.Thickness,
                DatumKey.In(spacer, "thickness"));
            return v => v[plug] + v[thickness];
        }
    }
}
