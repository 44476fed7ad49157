using System.Text;
using FitCheck.Catalog;
using FitCheck.Reports.Wording;

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
        Line("# Without `devices` and `channels` everything hangs on the factory radio; `fitcheck new build | cat` shows how "
            + "amplifiers, a quote and waivers are written.");
        return yaml.ToString();

        void Line(string text) => yaml.Append(text).Append('\n');
    }

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

    private static string Quoted(string text) =>
        $"\"{PlainText.Line(text).Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";
}
