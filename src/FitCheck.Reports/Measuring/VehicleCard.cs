using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Reports.Format;
using FitCheck.Yaml;

namespace FitCheck.Reports.Measuring;

/// <summary>
/// All that an entry of a vehicle takes, as a card to print: of one of which nothing is recorded yet for its usual places,
/// of another one for
/// its own, with what it has already.
/// </summary>
internal static class VehicleCard
{
    /// <summary>What is read at a place,
    /// in the order in which it is reached: the keys as the schema has them, in a person's words.</summary>
    public static readonly IReadOnlyList<(string Of, string What, string? How, bool OfTweeter)> AtPlace =
    [
        ("factory_channel", "Output of the radio that feeds it", null, true),
        ("airbag_near", "Airbag near it", "its mark on the trim", true),
        ("pressure_sensor", "Pressure sensor in the door", null, false),
        ("wet", "Water runs down behind the panel", null, true),
        ("factory_driver.size", "Factory driver: size", null, true),
        ("factory_driver.impedance", "Factory driver: impedance", "from its label", true),
        ("factory_driver.resistance", "Factory driver: DC resistance", "multimeter, unplugged", true),
        ("factory_driver.own_capacitor", "Factory driver: capacitor on it", null, true),
        ("connector.family", "Plug: type, or a sketch of it", null, true),
        ("connector.polarity", "Plug: is it known which wire is plus?", null, true),
        ("connector.distance", "Plug to the terminals", "lead pulled to the hole", true),
        ("feed.type", "What the wire carries", "test tone of 100 Hz", true),
        ("wire.gauge", "Factory wire: gauge", null, true),
        ("wire.length", "Factory wire: length, one way", null, true),
        ("mounting.recess", "Recess or trim ring, diameter", null, true),
        ("mounting.recess_minor", "Recess: short axis, where it is oval", null, false),
        ("mounting.cutout", "Hole in the panel, diameter", "in two directions", true),
        ("mounting.cutout_minor", "Hole: short axis, where it is oval", null, false),
        ("mounting.largest_cutout", "Largest hole that the panel allows", null, false),
        ("mounting.panel_thickness", "Thickness of the panel", null, true),
        ("mounting.panel_material", "Material of the panel", "magnet, cut edge", true),
        ("mounting.holes.circle", "Screw holes: circle", null, true),
        ("mounting.holes.count", "Screw holes: how many", null, true),
        ("mounting.holes.angles", "Screw holes: degrees from the top", null, false),
        ("mounting.holes.screw", "Screw holes: screw diameter", null, true),
        ("mounting.holes.slot", "Screw holes: length of the slots", null, false),
        ("mounting.depth", "Free depth behind the panel", "to the nearest fixed thing", true),
        ("mounting.obstructions.window glass.depth", "Window glass, fully down: depth", "none where there is none", false),
        ("mounting.obstructions.window glass.from_radius", "Window glass: from which radius on", "from the middle of the hole", false),
        ("mounting.obstructions.*.name", "What else stands behind", "name, depth, radius, from and to which hour", false),
        ("mounting.aim_clock", "Hour towards which it looks", null, false),
        ("mounting.module_room", "Room for a crossover: three sides", null, true),
        ("mounting.door_card_gap", "Panel to the back of the door card", "lumps of clay, card on", false),
        ("mounting.grille_gap", "Panel to the grille", "lumps of clay, card on", true),
        ("location", "Way from between the front heads", "forward, to the left, up", true),
    ];

    /// <summary>What is read of the car as a whole.</summary>
    public static readonly IReadOnlyList<(string Of, string What, string? How)> Whole =
    [
        ("steering", "Steering wheel", null),
        ("factory_source", "Factory radio", "name and number on it"),
        ("factory_amplified", "Factory amplifier", "follow the wires from the radio"),
        ("factory_equalised", "Radio shapes the sound", "pink noise, a voltmeter"),
        ("speaker_returns", "Minus wires of the loudspeakers", "ohmmeter, radio unplugged: open or next to nothing"),
        ("supply.battery", "Where the battery is", null),
        ("supply.voltage", "Voltage", null),
        ("supply.alternator", "Alternator", "from its label"),
        ("supply.battery_to_cargo", "Cable: battery to the cargo space", "a string along the way"),
        ("supply.battery_to_seat", "Cable: battery to under a front seat", null),
        ("supply.battery_to_dash", "Cable: battery to behind the dashboard", null),
        ("supply.main_fuse_place", "Where a main fuse finds room", null),
    ];

    // Of a car of which nothing is known: common practice, no source.
    private static readonly (string Name, bool OfTweeter)[] Usual =
    [
        ("Front door, left", false), ("Front door, right", false), ("Tweeter, left", true), ("Tweeter, right", true),
        ("Rear door, left", false), ("Rear door, right", false),
    ];

    /// <summary>The card of a vehicle; null for one of which nothing is recorded yet.</summary>
    /// <param name="vehicle">Its entry.</param>
    /// <param name="written">The entry as it is written.</param>
    /// <param name="options">Where the templates are.</param>
    /// <param name="output">Where the card goes.</param>
    public static void Write(Vehicle? vehicle, YamlMap? written, ReportOptions options, TextWriter output)
    {
        List<CardTable> tables =
        [
            .. Places(vehicle?.Positions, written),
            new("The car", [""], [.. Whole.Select(w => new CardRow(null, w.What, w.How, [Cell("vehicle", w.Of, written, null)]))]),
        ];
        MeasureCard.Write(new CardView("Measuring card", vehicle?.Name ?? "Vehicle, year, body: ____________________",
            "Disconnect the battery, and mind airbags. Leave empty what you can't read: the report will ask for it, "
                + "which a guess would prevent.",
            new(""), [], tables, [], vehicle is null ? "fitcheck new part vehicle writes the file into which these figures go."
                : "These figures go into the vehicle's entry; what is there already is printed."),
            AtPlace.Select(a => CardFigures.LetterOf(DatumKey.Position, a.Of)), options, output);
    }

    // So many columns as a sheet of paper has room for.
    private static IEnumerable<CardTable> Places(IReadOnlyList<Position>? positions, YamlMap? written)
    {
        const int Columns = 6;
        List<(string Name, bool OfTweeter, string? Id)> places = positions is null
            ? [.. Usual.Select(u => (u.Name, u.OfTweeter, (string?)null))]
            : [.. positions.Select(p => (p.Name, p.Role == "tweeter", (string?)p.Id))];
        foreach (var some in places.Chunk(Columns))
        {
            yield return new CardTable("At each place", [.. some.Select(s => s.Name)],
                [.. AtPlace.Select(a => new CardRow(CardFigures.LetterOf(DatumKey.Position, a.Of), a.What, a.How,
                    [.. some.Select(s => s.OfTweeter && !a.OfTweeter ? NotHere : Cell(DatumKey.Position, a.Of, written, s.Id))]))]);
        }
    }

    private static CardCell NotHere { get; } = new(IsField: false, null, null, null, "–");

    private static CardCell Cell(string kind, string of, YamlMap? written, string? position)
    {
        var known = written is null ? null : Recorded(kind == DatumKey.Position ? PlaceOf(written, position) : written, of, written);
        return known is null ? MeasureCard.Field(AnswerShape.Of(new DatumKey("", kind, of)))
            : new CardCell(IsField: false, null, null, null, known);
    }

    private static YamlMap? PlaceOf(YamlMap vehicle, string? id) => (vehicle["positions"] as YamlList)?.Items.OfType<YamlMap>()
        .FirstOrDefault(p => p["id"] is YamlScalar own && own.Text == id);

    private static string? Recorded(YamlMap? map, string of, YamlMap vehicle)
    {
        if (map is null)
            return null;
        return (Reading.PathOf(of, ["mounting.obstructions.*.depth", "mounting.obstructions.*.from_radius"]) ?? of.Split('.'))
            .Aggregate((YamlNode?)map, (node, key) => node switch
            {
                YamlMap inner => inner[key],
                YamlList list => list.Items.OfType<YamlMap>().FirstOrDefault(i => i["name"] is YamlScalar name && name.Text == key),
                YamlScalar { Text: "none" } none => none,
                _ => null,
            }) switch
        {
            YamlScalar scalar => scalar.Text switch { "true" => "yes", "false" => "no", var text => text },
            YamlList { Items.Count: 0 } => "none",
            YamlList list when list.Items.All(i => i is YamlScalar)
                => string.Join(", ", list.Items.OfType<YamlScalar>().Select(s => s.Text)),
            _ => map["mirror_of"] is YamlScalar other ? Recorded(PlaceOf(vehicle, other.Text), of, vehicle) : null,
        };
    }
}
