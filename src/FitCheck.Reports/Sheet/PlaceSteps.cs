using System.Globalization;
using FitCheck.Evaluation;
using FitCheck.Findings;

namespace FitCheck.Reports.Sheet;

/// <summary>What is done at one place of the vehicle, stage by stage, told from its facts.</summary>
internal static class PlaceSteps
{
    /// <summary>Out with what the factory put there.</summary>
    public static IEnumerable<string?> Remove(SheetFacts f)
    {
        if (f.Is("airbag_near") || f.Is("pressure_sensor"))
            yield return $"{(f.Is("airbag_near") ? "An airbag is near" : "The door carries a pressure sensor of the airbags")}: follow the vehicle maker's procedure.";
        if (f.Is("disconnected"))
            yield return "Unplug the factory driver. Insulate the plug. Nothing takes its place.";
        if (!f.Is("has_driver"))
            yield break;
        var unplug = f.Is("has_new_wire") ? "Unplug it. Insulate the factory plug: it is not used."
            : f.Word("factory_plug") is { } plug ? $"Unplug it ({plug} plug). Leave the plug on its wire." : "Unplug it. Leave the plug on its wire.";
        yield return $"Take off the {Cover(f)}. Unscrew the factory driver. {unplug} Keep screws and clips.";
        if (f.Is("factory_tweeter_capacitor"))
            yield return "The factory tweeter takes its capacitor with it: never plug a bare tweeter on this wire.";
    }

    /// <summary>Holes: what is there, what is needed, what has to be drilled.</summary>
    public static IEnumerable<string?> Cut(SheetFacts f, BuildResult build, string? template)
    {
        if (!f.Is("has_driver"))
            yield break;
        if (f.Is("in_cup"))
        {
            yield return $"Try the tweeter in the cup: {f.Shown("cup_hole_gap", "mm")} free around its body, {f.Shown("cup_depth_margin", "mm")} behind it.";
            yield break;
        }
        var hole = $"The hole in the panel is {f.Shown("hole_available", "mm")} wide{(f.IsGuess("hole_margin") ? $" (measured: {SheetFacts.Blank} mm)" : "")}; the driver needs {f.Shown("hole_needed", "mm")}.{(Passes("hole_margin") ? " Cut nothing." : "")}";
        var panel = f.Number("panel_holes_meeting") is null ? $" Which screw holes of the panel meet is not known: lay the {(f.Is("has_adapter") ? "spacer" : "driver")} on and mark them."
            : $" {Meeting("panel_holes_meeting", "panel_holes")} screw holes of the panel meet: {Drill(f, "panel", "panel_holes")}";
        var driver = f.Number("driver_holes_meeting") is null ? "" : $" {Meeting("driver_holes_meeting", "driver_holes")} of the driver meet the spacer: {Drill(f, "spacer", "driver_holes")}";
        yield return f.Is("is_tweeter") ? hole : $"{hole}{panel}{driver}{template}";

        string Meeting(string meeting, string all) => string.Create(CultureInfo.InvariantCulture, $"{f.Number(meeting)} of {f.Number(all)}");

        bool Passes(string fact) => build.Findings.Any(x => x.Position == f.Key && x.Fact == fact) && build.Findings.All(x => x.Position != f.Key || x.Fact != fact || x.Status == Status.Pass);
    }

    /// <summary>The parts from the panel outwards.</summary>
    public static IEnumerable<string?> Mount(SheetFacts f)
    {
        if (!f.Is("has_driver"))
            yield break;
        if (f.Is("in_cup"))
            yield return $"Put {f.Part("driver_name")} into {f.Part("cup_name")}{(f.Word("aim_towards") is { } aim ? $", turned towards {aim}" : "")}.";
        else if (f.Is("has_adapter"))
            yield return Spacer(f);
        else
            yield return $"Screw {f.Part("driver_name")} onto the panel.";
        if (f.Is("has_module"))
            yield return $"{f.Part("module_name")} lies here. Tie it down.";
        if (f.Is("in_cup"))
            yield break;
        var ring = f.Is("gasket_listed") ? $" Stick {f.Part("gasket_name")} ({f.Shown("gasket_free", "mm")} high) onto the front of the flange." : "";
        if (f.Is("has_adapter"))
            yield return $"Screw {f.Part("driver_name")} to the spacer. {Screws(f)}{ring}";
        else if (ring.Length > 0)
            yield return ring.TrimStart();
    }

    /// <summary>What is tried before the panel goes back.</summary>
    public static IEnumerable<string?> Close(SheetFacts f)
    {
        if (!f.Is("has_driver"))
            yield break;
        var glass = f.Is("has_glass") ? $"Run the window fully down and up: it keeps clear of the driver ({f.Planned("glass_margin")}). " : "";
        var grille = !f.Is("in_cup") && !f.Is("is_tweeter") ? $"Hold the cover on: the grille keeps clear of the cone at full travel ({f.Planned("front_margin")}). " : "";
        var water = f.Is("wet") ? "Close the water shed: no hole, no loose edge." : "";
        yield return (glass + grille + water).TrimEnd() is { Length: > 0 } text ? text : null;
    }

    private static string Spacer(SheetFacts f)
    {
        var side = f.Word("adapter_hand") is { } hand && hand != "no" ? $" (the {hand} one)" : "";
        var text = $"Screw {f.Part("adapter_name")}{side} to the panel, {f.Word("panel_turn") ?? "as its maker draws it"}.";
        if (f.Number("adapter_tilt") is not (null or 0))
        {
            text += f.Word("spacer_thick_side") is { } thick ? $" Thick side towards {thick}: the driver then looks towards {f.Word("aim_towards")}, seen from inside (tilt {f.Shown("adapter_tilt", "deg")})."
                : $" Thick side towards {SheetFacts.Blank} o'clock, away from the listener (tilt {f.Shown("adapter_tilt", "deg")}).";
        }
        return text + (f.Is("has_foam_under_spacer") ? " Foam tape or damping sheet goes between." : "");
    }

    private static string Screws(SheetFacts f)
    {
        var (longest, whole) = (f.Shown("screw_longest", "mm"), f.Shown("screw_whole_boss", "mm"));
        var limit = longest == whole ? $"{longest} long under the head, no longer" : $"no longer than {longest} under the head; {whole} uses the whole boss";
        return f.Is("has_screws") ? $"Screws: {f.Part("screw_name")} ({limit})." : $"Screws: {limit}.";
    }

    private static string Drill(SheetFacts f, string what, string holes) =>
        f.IsGuess($"{holes}_meeting") ? "that is a guess, lay the part on and mark before you drill."
        : f.Word($"{holes}_missed_at") is { } missed ? $"drill pilot holes in the {what} at {missed}." : "drill nothing.";

    private static string Cover(SheetFacts f) => f.Word("place") switch
    {
        "door" => "door card",
        "sail" => "trim of the mirror sail",
        "dash" => "grille on the dashboard",
        "pillar" => "trim of the pillar",
        "rear-panel" => "trim of the side panel",
        "shelf" => "cover of the shelf",
        "cargo" => "trim of the cargo space",
        _ => "cover",
    };
}
