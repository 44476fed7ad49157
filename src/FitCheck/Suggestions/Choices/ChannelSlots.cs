using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Yaml;

namespace FitCheck.Suggestions.Choices;

/// <summary>
/// What stands between an output and its drivers: crossover, its setting, filters, power limit, parts in the line, bridging.
/// </summary>
internal static class ChannelSlots
{
    private static readonly string[] BassCorners = ["25 Hz", "30 Hz", "40 Hz", "50 Hz", "60 Hz", "80 Hz", "100 Hz", "120 Hz", "150 Hz"];
    private static readonly string[] TrebleCorners = ["1600 Hz", "2000 Hz", "2500 Hz", "3000 Hz", "3500 Hz", "4000 Hz", "5000 Hz",
        "6300 Hz"];
    private static readonly string[] LowPassCorners = ["80 Hz", "60 Hz", "100 Hz"];
    private static readonly string[] Slopes = ["12 dB/octave", "24 dB/octave"];
    private static readonly string[] Limits = ["300 W", "200 W", "150 W", "100 W", "75 W", "50 W", "40 W", "30 W", "20 W", "10 W"];

    public static IEnumerable<Slot> Of(SlotContext g)
    {
        var channels = g.Channels.Where(s => ChannelOf(g, s) is not null).ToList();
        foreach (var pair in
            channels.Where(s => ChannelOf(g, s)!.Crossover is not null || (Treble(g, s) && s["high_pass"] is null)).ToList() is var crossed
                ? g.Paired(crossed, s => s["crossover"]) : [])
            yield return Crossover(g, pair);
        foreach (var pair in g.Paired(channels.Where(s => ChannelOf(g, s)!.Crossover?.Part.Settings.Count > 1),
            s => $"{ChannelOf(g, s)!.Crossover!.Part.Id} {s["setting"]}"))
            yield return Valued(g, pair, "setting", "crossover setting", "setting",
                ChannelOf(g, pair[0])!.Crossover!.Part.Settings.Select(x => x.Name));
        var filtered = channels.Where(s => !ChannelOf(g, s)!.Device.IsFactory).ToList();
        // An electronic high-pass before a crossover's own would be the second one.
        foreach (var pair in g.Paired(
            filtered.Where(s => s["high_pass"] is not null || !(Treble(g, s) && ChannelOf(g, s)!.Crossover is not null)),
            s => s["high_pass"]))
            yield return Valued(g, pair, "high_pass", "high-pass", "highpass",
                Filters(Treble(g, pair[0]) ? TrebleCorners : BassCorners, pair[0]["high_pass"]), mayGo: IsMissing(g, pair[0], high: true));
        foreach (var pair in g.Paired(filtered.Where(s => ChannelOf(g, s)!.Feeds.All(p => p.Driver?.Part.Type == "subwoofer")),
            s => s["low_pass"]))
            yield return Valued(g, pair, "low_pass", "low-pass", "lowpass", Filters(LowPassCorners, pair[0]["low_pass"]));
        // What is asked of a radio that has no filters can only be given up, short of another radio.
        foreach (var (key, what, atom) in new[] { ("high_pass", "high-pass", "highpass"), ("low_pass", "low-pass", "lowpass") })
        {
            foreach (var pair in g.Paired(channels.Except(filtered).Where(s => s[key] is not null && IsMissing(g, s, key == "high_pass")),
                s => s[key]))
                yield return Valued(g, pair, key, what, atom, [], mayGo: true);
        }
        foreach (var pair in g.Paired(filtered, s => s["limit"]))
            yield return Valued(g, pair, "limit", "power limit", "limit", Limits);
        foreach (var slot in InLine(g, channels))
            yield return slot;
        foreach (var site in channels.Where(s => ChannelOf(g, s)!.Outputs.Count > 1))
        {
            var channel = ChannelOf(g, site)!;
            yield return new Slot("output", [channel.Id], site["output"], [BuildInputs.At("output", channel.Id)], () =>
                Pairs(g, channel).Concat(channel.Outputs.Distinct(StringComparer.Ordinal)).Select(o => $"{channel.Device.Id}.{o}")
                    .Where(o => o != site["output"])
                    .Select((o, i) => new Option(o, [g.Editor.Replace((YamlScalar)site.Map["output"]!, o)]) { Rank = i }));
        }
    }

    // The pairs that the amplifier names, where nothing else hangs on them.
    private static IEnumerable<string> Pairs(SlotContext g, Channel channel) => channel.Device.Part is Amplifier { Bridges: { } bridges }
        ? bridges.Pairs.Where(
        p => !g.Build.Channels.Any(
            c => c != channel && c.Device.Id == channel.Device.Id && (c.Outputs.Contains(p.First) || c.Outputs.Contains(p.Second))))
            .Select(p => $"{p.First}+{p.Second}")
        : [];

    private static Slot Crossover(SlotContext g, IReadOnlyList<FitLine> pair)
    {
        var ids = Ids(g, pair);
        var now = ChannelOf(g, pair[0])!.Crossover?.Part.Id;
        return new Slot("crossover", ids, now, [.. BuildInputs.At("crossover", ids), .. BuildInputs.At("setting", ids)],
            () => g.Stock.All<Crossover>("crossover").Where(c => c.Id != now)
            .Select(c => new Option(c.Id, [.. pair.SelectMany(s => Edits(s, c))]) { Parts = [c] }));

        // A setting that the new crossover does not have goes with the old one.
        IEnumerable<TextEdit> Edits(FitLine site, Crossover crossover)
        {
            yield return Set(g, site, "crossover", crossover.Id);
            if (site["setting"] is { } setting && crossover.Settings.All(s => s.Name != setting))
                yield return g.Editor.RemoveKey(site.Map, "setting");
        }
    }

    private static bool IsMissing(SlotContext g, FitLine site, bool high) =>
        Facts.Contexts.FilterCheck.Of(g.Build, ChannelOf(g, site)!, high) is { IsThere: not true };

    private static Slot Valued(SlotContext g, IReadOnlyList<FitLine> pair, string key, string what, string atom,
        IEnumerable<string> values, bool mayGo = false)
    {
        var ids = Ids(g, pair);
        var now = pair[0][key];
        return new Slot(what, ids, now, BuildInputs.At(atom, ids), () =>
        [
            .. values.Where(v => v != now)
                .Select((v, i) => new Option(v, [.. pair.Select(s => Set(g, s, key, v))]) { Rank = Distance(now, v, i) })
                .OrderBy(o => o.Rank),
            .. mayGo ? new[] { new Option(null, [.. pair.Select(s => g.Editor.RemoveKey(s.Map, key))]) { Rank = 1_000 } } : [],
        ]);
    }

    private static IEnumerable<Slot> InLine(SlotContext g, List<FitLine> channels)
    {
        foreach (var pair in g.Paired(channels.Where(s => s.Map["in_line"] is YamlList { Items: [YamlScalar] }), s => Only(s).Text))
        {
            var ids = Ids(g, pair);
            var now = Only(pair[0]).Text;
            var type = (g.Stock.Catalog.Find(now) as Sundry)?.Type ?? "";
            yield return new Slot("part in the line", ids, now, BuildInputs.At("channel-inline", ids), () =>
            [
                .. g.Stock.With<Sundry>("sundry", type).Where(x => x.Type == type && x.Id != now)
                    .Select(x => new Option(x.Id, [.. pair.Select(s => g.Editor.Replace(Only(s), x.Id))]) { Parts = [x] }),
                new Option(null, [.. pair.Select(s => g.Editor.RemoveKey(s.Map, "in_line"))]) { Rank = 1 },
            ]);
        }

        static YamlScalar Only(FitLine site) => (YamlScalar)((YamlList)site.Map["in_line"]!).Items[0];
    }

    // A slope that is set stays: it is what the amplifier has.
    private static IEnumerable<string> Filters(IEnumerable<string> corners, string? now) =>
        corners.SelectMany(c => (now?.Split(" @ ") is [_, var slope] ? [slope] : Slopes).Select(s => $"{c} @ {s}"));

    // Steps away from what is set, so that of several that pass the nearest is told; from nothing, in their order.
    private static int Distance(string? now, string value, int index)
    {
        if (now is null || Number(now) is not { } a || Number(value) is not { } b || a <= 0 || b <= 0)
            return index;
        var other = now.Split('@')[^1].Trim() == value.Split('@')[^1].Trim() ? 0 : 1;
        return (int)Math.Round(20 * Math.Abs(Math.Log2(a / b))) + other;
    }

    private static double? Number(string text) => Physics.Quantities.QuantityText.Parse(text.Split('@')[0].Trim())?.Si;

    private static TextEdit Set(SlotContext g, FitLine site, string key, string value) =>
        site.Map[key] is YamlScalar scalar ? g.Editor.Replace(scalar, value) : g.Editor.AddKey(site.Map, key, value);

    private static bool Treble(SlotContext g, FitLine site) => site.Positions.All(p => g.Vehicle.Find(p)?.Role == "tweeter");

    private static List<string> Ids(SlotContext g, IReadOnlyList<FitLine> pair) => [.. pair.Select(s => ChannelOf(g, s)!.Id)];

    private static Channel? ChannelOf(SlotContext g, FitLine site) => g.Build.Channels.FirstOrDefault(c => c.Id == site["id"]);
}
