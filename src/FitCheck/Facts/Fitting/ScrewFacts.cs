using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Fitting;

/// <summary>
/// The driver's screws in the spacer. A screw of length L under the head goes through the flange (f) and into the boss (b): it holds over min(L − f, b).
/// Its tip may go as deep as the spacer is thick there before it stands on the panel: on a tilted spacer the screw at the thin edge decides, where along
/// the driver's axis (t − r·sinθ)/cosθ of material lie under the flange, r being the radius of the driver's bolt circle; a boss is as deep as its maker
/// says all around. The panel is taken to reach under every screw.
/// </summary>
internal static class ScrewFacts
{
    private const string Gauge = "Measure the depth of a screw boss with a depth gauge.";
    private const string Calliper = "Measure with a calliper.";

    public static readonly IReadOnlyList<FactDeclaration> Declarations =
    [
        Declare.Truth(Subject.Position, "has_screws", "Screws for the driver are on the list of the build."),
        Declare.Word(Subject.Position, "screw_name", "Name of the screws."),
        Length("screw_hold", "Length over which the driver's screw holds in the spacer."),
        Declare.Number(Subject.Position, "screw_hold_ratio", Dimension.One, "That length over the screw's diameter."),
        Length("screw_tip_room", "Distance between the tip of the driver's screw and the panel; negative when it stands on the panel."),
        Length("screw_play", "Diameter that the driver's screw holes have to spare around the screw."),
        Length("screw_longest", "Longest screw that holds the driver without reaching the panel, under the head.").On(RestsOn.Driver | RestsOn.Mount),
        Length("screw_whole_boss", "Shortest screw that uses the whole depth of the spacer's bosses, under the head.").On(RestsOn.Driver | RestsOn.Mount),
    ];

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        if (c.Driver is not { IsTweeter: false } driver || c.Cup is not null || c.Adapter is not { } adapter)
            return;
        var longest = new Stack(Dimension.Metre);
        var (flange, room) = (Flange(c, longest), Room(c, adapter, longest));
        sheet.Set("screw_longest", longest.Of(v => v[flange] + room(v)));
        var whole = new Stack(Dimension.Metre);
        var (under, boss) = (Flange(c, whole), whole.Need("depth of the spacer's screw bosses", Gauge, adapter.BossDepth));
        sheet.Set("screw_whole_boss", whole.Of(v => v[under] + v[boss]));
        var screw = Screw(c.Placed);
        sheet.Set("has_screws", screw is not null);
        if (screw is null)
            return;
        sheet.Set("screw_name", screw.Name);
        Hold(c, adapter, screw, sheet);
        var tip = new Stack(Dimension.Metre);
        var (through, length, depth) = (Flange(c, tip), tip.Need($"length of {screw.Name}", Calliper, screw.Length), Room(c, adapter, tip));
        sheet.Set("screw_tip_room", tip.Of(v => v[through] + depth(v) - v[length]));
        var play = new Stack(Dimension.Metre);
        var (hole, thread) = (play.Need(c.OfDriver("screw size"), Calliper, Exact(driver.Holes?.Screw)), play.Need($"diameter of {screw.Name}", Calliper, Exact(screw.Diameter)));
        sheet.Set("screw_play", play.Of(v => v[hole] - v[thread]));
    }

    // Of several kinds of screws at one place the shortest hold the driver; the others go through the spacer.
    private static Sundry? Screw(Placed placed)
    {
        Sundry? shortest = null;
        foreach (var sundry in placed.Sundries)
        {
            if (sundry.Part.Type == "screws" && (shortest is null || sundry.Part.Length?.Si < shortest.Length?.Si))
                shortest = sundry.Part;
        }
        return shortest;
    }

    private static void Hold(PositionContext c, Adapter adapter, Sundry screw, FactSheet sheet)
    {
        var hold = new Stack(Dimension.Metre);
        var length = hold.Need($"length of {screw.Name}", Calliper, screw.Length);
        var flange = Flange(c, hold);
        var boss = hold.Need("depth of the spacer's screw bosses", Gauge, adapter.BossDepth);
        var value = hold.Of(v => Math.Min(v[length] - v[flange], v[boss]));
        sheet.Set("screw_hold", value);
        var ratio = new Stack(Dimension.One);
        var (longest, under, deep) = (ratio.Need($"length of {screw.Name}", Calliper, screw.Length), Flange(c, ratio), ratio.Need("depth of the spacer's screw bosses", Gauge, adapter.BossDepth));
        var diameter = ratio.Need($"diameter of {screw.Name}", Calliper, Exact(screw.Diameter));
        sheet.Set("screw_hold_ratio", ratio.Of(v => Math.Min(v[longest] - v[under], v[deep]) / v[diameter]));
    }

    private static Func<double[], double> Room(PositionContext c, Adapter adapter, Stack stack)
    {
        var thickness = stack.Need("thickness of the spacer", Calliper, adapter.Thickness);
        if (adapter.Tilt is not { Si: not 0 })
            return v => v[thickness];
        var tilt = stack.Need("tilt of the spacer", Calliper, adapter.Tilt);
        var circle = stack.Need(c.OfDriver("bolt circle"), Calliper, c.Driver!.Holes?.Circle ?? c.Size?.Flange);
        var boss = stack.Need("depth of the spacer's screw bosses", Gauge, adapter.BossDepth);
        return v => Math.Max(v[boss], (v[thickness] - (v[circle] / 2 * Math.Sin(Math.Abs(v[tilt])))) / Math.Cos(v[tilt]));
    }

    private static int Flange(PositionContext c, Stack stack) => stack.Need(c.OfDriver("flange thickness"), Calliper, c.Size?.FlangeThickness);

    // Thread and screw sizes are nominal ones, not lengths that someone measured.
    private static Figure? Exact(Figure? size) => size is null ? null : size with { Quantity = size.Quantity with { Tolerance = size.Quantity.Tolerance ?? 0 } };

    private static FactDeclaration Length(string name, string meaning) => Declare.Number(Subject.Position, name, Dimension.Metre, meaning);
}
