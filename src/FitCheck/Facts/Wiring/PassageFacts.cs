using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Wiring;

/// <summary>New cables through the sheet metal of doors, and the rubber on the list for them.</summary>
internal static class PassageFacts
{
    public static readonly FactGroup OfBuild = new(Subject.Build);

    public static readonly NumberFact DoorPassages = OfBuild.Number(
        "door_passages", Dimension.One, "Doors into which new speaker wire goes.",
        Reads.Whole.Itself);
    public static readonly NumberFact GrommetsListed = OfBuild.Number(
        "grommets_listed", Dimension.One, "Grommets on the list, a pack counted by its pieces.",
        Reads.Whole.Itself);

    public static void Compute(Build build, FactSheet sheet)
    {
        // Woofer and tweeter of one door hang on one factory output, and their wires share the passage.
        var wired = build.Placed.Where(p => p.NewWire is not null).Select(p => p.Position).ToList();
        var doors = wired.Where(p => p.Place == "door").Select(p => p.FactoryChannel?.Value ?? p.Id)
            .Distinct(StringComparer.Ordinal).Count();
        var untold = wired.Where(p => p.Place.Length == 0).ToList();
        sheet.Set(DoorPassages, FactValue.Of(Dimension.One, new Uncertain(doors, doors, doors + untold.Count, untold.Count / 2.0)) with
        {
            Unsure = [.. untold.Select(p => new Unsure($"place of {p.Name}", "Look whether it is in a door.", Estimated: false)
            { IsBounded = true })],
        });
        // As the list counts them: a pack that is fitted somewhere serves everywhere.
        sheet.Set(GrommetsListed, build.Placed.SelectMany(p => p.Sundries).Select(s => s.Part).Where(IsGrommet).DistinctBy(s => s.Id)
            .Sum(s => s.Pack) + build.Extras.Where(e => IsGrommet(e.Part)).Sum(e => e.Packs * e.Part.Pack));
    }

    private static bool IsGrommet(Part part) => part is Sundry { Type: "grommet" };
}
