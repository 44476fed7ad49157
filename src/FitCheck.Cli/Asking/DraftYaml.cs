using System.Text;
using FitCheck.Catalog;
using FitCheck.Reports.Wording;
using FitCheck.Yaml;

namespace FitCheck.Cli.Asking;

/// <summary>Writes a draft as the commented build file that a person goes on with.</summary>
internal static class DraftYaml
{
    public static string Of(BuildDraft draft)
    {
        var yaml = new StringBuilder();
        Line("# A build says what goes where in one vehicle. Check it with `fitcheck check FILE`; an editor helps with `fitcheck schema "
            + "build`.");
        Line("kind: build");
        Line($"name: {Quoted($"{draft.Vehicle.Name}: "
            + $"{Names.Listed([.. draft.Places.Select(p => p.Set?.Name ?? p.Driver.Name).Distinct(StringComparer.Ordinal)])}")}");
        Line($"vehicle: {draft.Vehicle.Id}{Remark(draft.Vehicle)}");
        Line(draft.Budget.Length == 0 ? "# budget: 180.00 EUR" : $"budget: {draft.Budget}");
        Line("");
        Line("# Work that you accept, of cut-wires, drill, enlarge-holes and trim-parts. What stands not here is not expected of you.");
        Line($"accepts: [{string.Join(", ", draft.Accepts)}]");
        Line("");
        Line("# What goes where. Entries for the same position add up.");
        Line("fit:");
        foreach (var set in draft.Places.Where(p => p.Set is not null).GroupBy(p => p.Set!.Id, StringComparer.Ordinal))
        {
            Line($"  - at: [{string.Join(", ", set.Select(p => p.Group.Ids))}]");
            Line($"    set: {set.Key}{Remark(set.First().Set!)}");
        }
        foreach (var place in draft.Places)
            Place(yaml, place);
        foreach (var (groups, key) in new[] { (draft.Unplugged, "disconnected"), (draft.Kept, "keeps_factory_driver") })
        {
            foreach (var group in groups)
            {
                Line($"  - at: [{group.Ids}]{Remark(group.Name)}");
                Line($"    {key}: true");
            }
        }
        Line("");
        if (draft.Drive is { } drive)
            Drive(yaml, draft, drive);
        else
            Line("# Without `devices` and `channels` everything is connected to the factory radio; `fitcheck new build | cat` shows how "
                + "amplifiers, a quote and waivers are written.");
        return yaml.ToString();

        void Line(string text) => yaml.Append(text).Append('\n');
    }

    private static void Drive(StringBuilder yaml, BuildDraft draft, DriveDraft drive)
    {
        var outputs = draft.Outputs;
        var takes = outputs.Where(o => o.Feeds[0].FactoryChannel is not null).Select(o => o.Id).ToList();
        var taken = takes.Count == 0 ? "" : $", takes: [{string.Join(", ", takes)}]";
        Line("devices:");
        Line("  - {id: radio, part: factory}");
        if (drive.Converter is { } converter)
            Line($"  - {{id: lines, part: {converter.Id}, from: radio{taken}}}{Remark(converter)}");
        Line($"  - id: amp{Remark(drive.Amplifier)}");
        Line($"    part: {drive.Amplifier.Id}");
        Line(drive.Converter is null ? $"    from: radio{taken.Replace(", takes", "\n    takes", StringComparison.Ordinal)}"
            : "    from: lines");
        Line($"    place: {drive.Place}");
        if (drive.Converter is not null)
            Line("    gain: 2 V");
        if (drive.Cable is { } cable)
        {
            Line($"    power_cable: {cable.Id}{Remark(cable)}");
            if (Way(draft.Vehicle, drive.Place) is { } way)
                Line($"    power_length: {way}  # as the vehicle's entry has it");
            Line("    fuse_distance: 300 mm  # from the battery, along the cable");
            Line("    ground_length: 0.5 m");
        }
        Line("channels:");
        for (var i = 0; i < outputs.Count; i++)
        {
            var isSub = outputs[i].Feeds.All(p => p.Role == "subwoofer");
            var filters = isSub ? ", high_pass: 30 Hz @ 24 dB/octave, low_pass: 80 Hz @ 24 dB/octave"
                : drive.HighPass ? ", high_pass: 80 Hz @ 12 dB/octave" : "";
            Line($"  - {{id: {outputs[i].Id}, output: amp.{Figures.Whole(i + 1)}{filters}, "
                + $"feeds: [{string.Join(", ", outputs[i].Feeds.Select(p => p.Id))}]}}");
        }

        void Line(string text) => yaml.Append(text).Append('\n');
    }

    // To where the amplifier sits, as far as somebody has measured it.
    private static string? Way(Vehicle vehicle, string place) => (place switch
    {
        "cargo" => vehicle.BatteryToCargo,
        "under-seat" => vehicle.BatteryToSeat,
        _ => vehicle.BatteryToDash,
    }) is { } way ? Figures.Show(way.Si, "m") : null;

    private static void Place(StringBuilder yaml, PlaceDraft place)
    {
        var alike = place.Mounts.Distinct().Count() == 1;
        List<string> lines = [];
        if (place.Set is null)
            lines.Add($"driver: {place.Driver.Id}{Remark(place.Driver)}");
        if (alike && place.Mounts[0] is { } mount)
            lines.Add(Mounted(mount));
        if (place.Harness is { } harness)
            lines.Add($"harness: {harness.Id}{Remark(harness)}");
        if (lines.Count > 0)
        {
            Line($"  - at: [{place.Group.Ids}]{Remark(place.Group.Name)}");
            lines.ForEach(l => Line("    " + l));
            Line("    # with: [foam-tape-3x12]  # small parts: tape under the spacer, a ring towards the door card, screws");
            Line("    # measured: {depth: 76 mm, grille_gap: 54 mm}  # what you measured on your own car replaces the catalog's "
                + "figures");
        }
        for (var i = 0; i < place.Mounts.Count && !alike; i++)
        {
            if (place.Mounts[i] is { } own)
            {
                Line($"  - at: [{place.Group.Positions[i].Id}]");
                Line("    " + Mounted(own));
            }
        }

        void Line(string text) => yaml.Append(text).Append('\n');
    }

    private static string Mounted(Part mount) => $"{(mount is Cup ? "cup" : "adapter")}: {mount.Id}{Remark(mount)}";

    private static string Remark(Entry entry) => Remark(entry.Name);

    private static string Remark(string name) => "  # " + PlainText.Line(name);

    private static string Quoted(string text) => YamlText.Quoted(PlainText.Line(text));
}
