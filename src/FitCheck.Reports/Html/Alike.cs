using System.Globalization;
using System.Text.RegularExpressions;
using FitCheck.Drawings;
using FitCheck.Evaluation;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Reports.Svg;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Html;

/// <summary>
/// Subjects that differ in no more than their side, to be shown on one card; usually a left and a right one, often a single one.
/// </summary>
internal sealed record Alike<T>(string Name, IReadOnlySet<string> Keys, IReadOnlyList<T> Things, T? Shown)
    where T : class;

/// <summary>
/// Finds subjects that are alike: what is drawn of them is equal but for names and sides, and the same rules find something. What is said
/// of one of them alone names it.
/// </summary>
internal static partial class Alike
{
    public static IReadOnlyList<Alike<PositionDrawing>> Positions(BuildResult build) =>
        Of(build, Subject.Position, build.Drawings, d => d.Position, d => d.Name, Look, Shown);

    public static IReadOnlyList<Alike<LoadCurve>> Channels(BuildResult build) =>
        Of(build, Subject.Channel, build.Loads, l => l.Channel, l => l.Name, Look, Shown);

    /// <summary>Wires that run through the same things on both sides are drawn once.</summary>
    public static IEnumerable<WiringDiagram> Wirings(IEnumerable<WiringDiagram> wirings) =>
        wirings.GroupBy(
            w => string.Join('\n',
                [w.Output, w.Crossover, w.Terminals.Count.ToString(CultureInfo.InvariantCulture), .. w.InLine,
                    .. w.Ends.Select(e => $"{e with { Position = SideLess(e.Position) }}")]), StringComparer.Ordinal)
            .Select(g => Shown([.. g]));

    private static WiringDiagram Shown(IReadOnlyList<WiringDiagram> wirings) => wirings.Count == 1 ? wirings[0] : wirings[0] with
    {
        Name = Names.Joined(wirings.Select(w => w.Name)),
        Terminals = [TerminalsOf(wirings)],
        Ends = [.. wirings[0].Ends.Select((e, i) => e with { Position = Names.Joined(wirings.Select(w => w.Ends[i].Position)) })],
    };

    // A number on an amplifier does not tell which side it feeds; a name such as `front-left` does.
    private static string TerminalsOf(IReadOnlyList<WiringDiagram> wirings)
    {
        var told = wirings.Select(w => (Terminals: string.Join('+', w.Terminals), w.Channel)).ToList();
        return told.Exists(t => t.Terminals == t.Channel) ? Names.Listed([.. told.Select(t => t.Terminals)])
            : string.Join(", ", told.Select(t => $"{t.Terminals} {t.Channel}"));
    }

    // Subjects in the order of the facts; a drawing without facts comes after them.
    private static List<Alike<T>> Of<T>(
        BuildResult build, Subject subject, IReadOnlyList<T> things, Func<T, string> key, Func<T, string> name, Func<T, string> look,
        Func<IReadOnlyList<T>, string, T> shown)
        where T : class
    {
        var found = build.Findings.Where(f => f.Status != Status.Pass && f.Waived is null)
            .ToLookup(f => f.Position, StringComparer.Ordinal);
        return [.. build.Facts.Where(f => f.Subject == subject).Select(f => (f.Key, f.Name))
            .Concat(things.Select(t => (Key: key(t), Name: name(t))))
            .DistinctBy(s => s.Key, StringComparer.Ordinal)
            .Select(s => (s.Key, s.Name, Thing: things.FirstOrDefault(t => key(t) == s.Key)))
            // What is not drawn stays alone: nothing shows that it is the same.
            .GroupBy(s =>
            s.Thing is null ? s.Key : $"{look(s.Thing)}\n{Rules(found[s.Key])}",
                StringComparer.Ordinal)
            .Select(g => Merged(g.ToList()))];

        Alike<T> Merged(List<(string Key, string Name, T? Thing)> group)
        {
            List<T> drawn = [.. group.Select(s => s.Thing).OfType<T>()];
            var joined = Names.Joined(group.Select(s => s.Name));
            return new(joined, group.Select(s => s.Key).ToHashSet(StringComparer.Ordinal), drawn,
                drawn.Count == 0 ? null : shown(drawn, joined));
        }
    }

    private static string Rules(IEnumerable<Finding> findings) =>
        string.Join('\n', findings.Select(f => $"{f.Rule}\t{f.Status}").Order(StringComparer.Ordinal));

    /// <summary>True where what is drawn of the first stands the other way round at another one.</summary>
    public static bool HasMirrorImage(IReadOnlyList<PositionDrawing> drawings) =>
        drawings.Select(AsItStands).Distinct(StringComparer.Ordinal).Count() > 1;

    // Of a place and its mirror image one look stands for both.
    private static string Look(PositionDrawing drawing)
    {
        var (here, there) = (AsItStands(drawing), AsItStands(Mirrored.Of(drawing)));
        return string.CompareOrdinal(here, there) <= 0 ? here : there;
    }

    private static string AsItStands(PositionDrawing drawing) =>
        SideLess($"{drawing.DriverName}\n{drawing.AdapterName}\n{drawing.CupName}\n"
            + $"{SectionDrawing.Draw("x", drawing with { Name = "", DriverName = null, AdapterName = null })}");

    private static string Look(LoadCurve load)
    {
        var nameless = load with { Name = "", Tweeters = [.. load.Tweeters.Select(t => t with { Name = "" })] };
        return $"{LoadPlot.Draw("x", nameless)}\n{TweeterPlot.Draw("x", nameless)}\n"
            + $"{(load.GainVolts is { } gain ? Sentences.Gain(gain) : "")}";
    }

    private static PositionDrawing Shown(IReadOnlyList<PositionDrawing> drawings, string name) =>
        drawings[0] with
        {
            Name = name,
            AdapterName = drawings[0].AdapterName is null ? null : Names.Joined(drawings.Select(d => d.AdapterName!))
        };

    private static LoadCurve Shown(IReadOnlyList<LoadCurve> loads, string name) => loads[0] with
    {
        Name = name,
        Tweeters = [.. loads[0].Tweeters.Select((t, i) => t with { Name = Names.Joined(loads.Select(l => l.Tweeters[i].Name)) })],
    };

    /// <summary>The text with left and right made one word.</summary>
    public static string SideLess(string text) => Side().Replace(text, "side");

    [GeneratedRegex(@"\b(?:left|right)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Side();
}
