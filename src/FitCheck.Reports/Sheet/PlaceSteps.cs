using System.Globalization;
using FitCheck.Evaluation;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Sound;
using FitCheck.Facts.Values;
using FitCheck.Facts.Wiring;
using FitCheck.Findings;

namespace FitCheck.Reports.Sheet;

/// <summary>What is done at one place of the vehicle, stage by stage, told from its facts.</summary>
internal static class PlaceSteps
{
    /// <summary>Out with what the factory put there.</summary>
    public static IEnumerable<string?> Remove(SheetFacts f)
    {
        if (f.Is(PlaceFacts.AirbagNear) || f.Is(PlaceFacts.PressureSensor))
            yield return $"{(f.Is(PlaceFacts.AirbagNear) ? "An airbag is near" : "The door carries a pressure sensor of the airbags")}: "
                + $"follow the vehicle maker's procedure.";
        if (f.Is(PlaceFacts.Disconnected))
            yield return "Unplug the factory driver. Insulate the plug. Nothing takes its place.";
        if (!f.Is(PlaceFacts.HasDriver))
            yield break;
        var unplug = f.Is(WiringFacts.HasNewWire) ? "Unplug it. Insulate the factory plug: it is not used."
            : f.Word(WiringFacts.FactoryPlug) is { } plug ? $"Unplug it ({plug} plug). Leave the plug on its wire."
            : "Unplug it. Leave the plug on its wire.";
        yield return $"Take off the {Cover(f)}. Unscrew the factory driver. {unplug} Keep screws and clips.";
        if (f.Is(TweeterFacts.FactoryTweeterCapacitor))
            yield return "The factory tweeter takes its capacitor with it: never plug a bare tweeter on this wire.";
    }

    /// <summary>Holes: what is there, what is needed, what has to be drilled.</summary>
    public static IEnumerable<string?> Cut(SheetFacts f, BuildResult build, string? template)
    {
        if (!f.Is(PlaceFacts.HasDriver))
            yield break;
        if (f.Is(PlaceFacts.InCup))
        {
            yield return $"Try the tweeter in the cup: {f.Shown(CupFacts.CupHoleGap, "mm")} free around its body, "
                + $"{f.Shown(CupFacts.CupDepthMargin, "mm")} behind it.";
            yield break;
        }
        var hole = $"The hole in the panel is {f.Shown(MountingFacts.HoleAvailable, "mm")} wide"
            + $"{(f.IsGuess(MountingFacts.HoleMargin) ? $" (measured: {SheetFacts.Blank} mm)" : "")}; the driver needs "
            + $"{f.Sized(MountingFacts.HoleNeeded, orMore: true)}.{(Passes(MountingFacts.HoleMargin) ? " Cut nothing." : "")}";
        var panel = f.Number(HoleFacts.PanelHolesMeeting) is null
            ? $" Which screw holes of the panel meet is not known: lay the {(f.Is(PlaceFacts.HasAdapter) ? "spacer" : "driver")} on and "
                + $"mark them."
            : $" {Meeting(HoleFacts.PanelHolesMeeting, HoleFacts.PanelHoles)} screw holes of the panel meet: "
                + $"{Drill(f, "panel", HoleFacts.PanelHolesMeeting, HoleFacts.PanelHolesMissedAt)}";
        var driver = f.Number(HoleFacts.DriverHolesMeeting) is null ? ""
            : $" {Meeting(HoleFacts.DriverHolesMeeting, HoleFacts.DriverHoles)} of the driver meet the spacer: "
                + $"{Drill(f, "spacer", HoleFacts.DriverHolesMeeting, HoleFacts.DriverHolesMissedAt)}";
        yield return f.Is(TweeterFacts.IsTweeter) ? hole : $"{hole}{panel}{driver}{template}";

        string Meeting(NumberFact meeting, NumberFact all) =>
            string.Create(CultureInfo.InvariantCulture, $"{f.Number(meeting)} of {f.Number(all)}");

        bool Passes(Fact fact) =>
            build.Findings.Any(x => x.Position == f.Key && x.Fact == fact.Name)
                && build.Findings.All(x => x.Position != f.Key || x.Fact != fact.Name || x.Status == Status.Pass);
    }

    /// <summary>The parts from the panel outwards.</summary>
    public static IEnumerable<string?> Mount(SheetFacts f)
    {
        if (!f.Is(PlaceFacts.HasDriver))
            yield break;
        if (f.Is(PlaceFacts.InCup))
            yield return $"Put {f.Part(PlaceFacts.DriverName)} into {f.Part(PlaceFacts.CupName)}"
                + $"{(f.Word(AimFacts.AimTowards) is { } aim ? $", turned towards {aim}" : "")}.";
        else if (f.Is(PlaceFacts.HasAdapter))
            yield return Spacer(f);
        else
            yield return f.Is(TweeterFacts.IsTweeter)
                ? $"Set {f.Part(PlaceFacts.DriverName)} into the hole of the panel, and hold it from behind."
                : $"Screw {f.Part(PlaceFacts.DriverName)} onto the panel.{InPanel(f)}";
        if (f.Is(CupFacts.HasModule))
            yield return $"{f.Part(PlaceFacts.ModuleName)} lies here. Tie it down.";
        if (f.Is(PlaceFacts.InCup))
            yield break;
        var ring = f.Is(GasketFacts.GasketListed)
            ? $" Stick {f.Part(GasketFacts.GasketName)} ({f.Shown(GasketFacts.GasketFree, "mm")} high) onto the front of the flange." : "";
        if (f.Is(PlaceFacts.HasAdapter))
            yield return f.Is(TweeterFacts.IsTweeter) ? $"Set {f.Part(PlaceFacts.DriverName)} into the spacer, and hold it from behind."
                : $"Screw {f.Part(PlaceFacts.DriverName)} to the spacer. {Screws(f)}{ring}";
        else if (ring.Length > 0)
            yield return ring.TrimStart();
    }

    /// <summary>What is tried before the panel goes back.</summary>
    public static IEnumerable<string?> Close(SheetFacts f)
    {
        if (!f.Is(PlaceFacts.HasDriver))
            yield break;
        var glass = f.Is(MountingFacts.HasGlass)
            ? $"Run the window fully down and up: it keeps clear of the driver ({f.Planned(MountingFacts.GlassMargin)}). " : "";
        var grille = !f.Is(PlaceFacts.InCup) && !f.Is(TweeterFacts.IsTweeter)
            ? $"Hold the cover on: the grille keeps clear of the cone at full travel ({f.Planned(MountingFacts.FrontMargin)}). " : "";
        var water = f.Is(PlaceFacts.Wet) ? "Close the water shed: no hole, no loose edge." : "";
        yield return (glass + grille + water).TrimEnd() is { Length: > 0 } text ? text : null;
    }

    private static string Spacer(SheetFacts f)
    {
        var side = f.Word(PlaceFacts.AdapterHand) is { } hand && hand != "no" ? $" (the {hand} one)" : "";
        var text = $"Screw {f.Part(PlaceFacts.AdapterName)}{side} to the panel, {f.Word(HoleFacts.PanelTurn) ?? "as its maker draws it"}.";
        if (f.Number(MountingFacts.AdapterTilt) is not (null or 0))
        {
            text += f.Word(AimFacts.SpacerThickSide) is { } thick
                ? $" Thick side towards {thick}: the driver then looks towards {f.Word(AimFacts.AimTowards)}, seen from inside (tilt "
                    + $"{f.Shown(MountingFacts.AdapterTilt, "deg")})."
                : $" Thick side towards {SheetFacts.Blank} o'clock, away from the listener (tilt "
                    + $"{f.Shown(MountingFacts.AdapterTilt, "deg")}).";
        }
        return text + InPanel(f) + (f.Is(PlaceFacts.HasFoamUnderSpacer) ? " Foam tape or damping sheet goes between." : "");
    }

    private static string InPanel(SheetFacts f) => f.Is(PanelScrewFacts.HasPanelScrews)
        ? $" Screws for the panel: {f.Part(PanelScrewFacts.PanelScrewName)}." : "";

    private static string Screws(SheetFacts f)
    {
        var (longest, whole) = (f.Sized(ScrewFacts.ScrewLongest, orMore: false), f.Sized(ScrewFacts.ScrewWholeBoss, orMore: false));
        var limit = longest == whole ? $"{longest} long under the head, no longer"
            : $"no longer than {longest} under the head; {whole} uses the whole boss";
        return f.Is(ScrewFacts.HasScrews) ? $"Screws: {f.Part(ScrewFacts.ScrewName)} ({limit})." : $"Screws: {limit}.";
    }

    private static string Drill(SheetFacts f, string what, NumberFact meeting, WordFact missedAt) =>
        f.IsGuess(meeting) ? "that is a guess, lay the part on and mark before you drill."
        : f.Word(missedAt) is { } missed ? $"drill pilot holes in the {what} at {missed}." : "drill nothing.";

    private static string Cover(SheetFacts f) => f.Word(PlaceFacts.Place) switch
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
