using FitCheck.Builds;
using FitCheck.Facts.Devices;
using FitCheck.Facts.Values;
using FitCheck.Rules.Model;
using FitCheck.Suggestions.Choices;

namespace FitCheck.Suggestions.Trials;

/// <summary>
/// On which choices of a build a finding can rest, told from what the facts declare that its rule names. Naming too many costs time; naming
/// too few would hide answers, and a test changes every choice of every reference build to see that no finding outside moves.
/// </summary>
internal sealed class FindingInputs(Build build)
{
    // Sources that are a few choices of the subject itself, by the words of those; none where no choice changes what is read.
    private static readonly Dictionary<Source, string[]> Own = new(ReferenceEqualityComparer.Instance)
    {
        [Reads.Place] = [],
        [Reads.Vehicle] = [],
        [Reads.Measured] = [],
        [Reads.Work] = [],
        [Reads.Treatment] = [],
        [Reads.Box] = [],
        [Reads.Supply] = [],
        [Reads.Driver] = ["driver"],
        [Reads.DriverThere] = ["driver"],
        [Reads.Adapter] = ["adapter"],
        [Reads.AdapterThere] = ["adapter"],
        [Reads.Cup] = ["cup"],
        [Reads.CupThere] = ["cup"],
        [Reads.Mounted] = ["driver", "adapter", "cup"],
        [Reads.Under] = ["driver", "adapter", "cup"],
        [Reads.OnPanel] = ["driver", "adapter", "cup"],
        [Reads.Harness] = ["harness"],
        [Reads.Module] = ["module"],
        [Reads.Gasket] = ["gasket"],
        [Reads.Tape] = ["tape"],
        [Reads.MoistureGuard] = ["moisture-guard"],
        [Reads.Screws] = ["screws"],
        [Reads.Wire] = ["wire"],
        [Reads.Inline] = ["inline"],
        [Reads.Feed] = ["fed"],
        [Reads.Device] = ["part"],
        [Reads.OwnLimit] = ["limit"],
        [Reads.Gain] = ["gain"],
        [Reads.PowerCable] = ["cable"],
        [Reads.Fuse] = ["cable", "fuse"],
        [Reads.GroundCable] = ["cable", "ground"],
    };

    private readonly Dictionary<(string, string), IReadOnlySet<string>> _known = [];

    /// <summary>The atoms that a rule's finding on a subject rests on.</summary>
    public IReadOnlySet<string> Of(Rule rule, string key)
    {
        if (!_known.TryGetValue((rule.Id, key), out var atoms))
            _known[(rule.Id, key)] =
                atoms = rule.Names.SelectMany(name => Of(rule.Scope.Find(name)!, key)).ToHashSet(StringComparer.Ordinal);
        return atoms;
    }

    private IEnumerable<string> Of(Fact fact, string key) => fact.Subject switch
    {
        Subject.Position => Each(fact, key, source => OfPosition(source, key)),
        Subject.Channel => build.Channels.FirstOrDefault(c => c.Id == key) is { } channel
            ? Each(fact, key, source => OfChannel(source, channel)) : OfNewChannel(key),
        Subject.Device => key == DeviceFacts.MainCable || build.Devices.Any(d => d.Id == key)
            ? Each(fact, key, source => OfDevice(source, key)) : OfNewDevice(fact),
        Subject.Driver => build.Placed.Select(p => BuildInputs.At("driver", p.Position.Id)),
        _ => [BuildInputs.All],
    };

    private static IEnumerable<string> Each(Fact fact, string key, Func<Source, IEnumerable<string>> others) =>
        fact.Inputs.SelectMany(i => Own.TryGetValue(i.Source, out var words) ? At(key, words) : others(i.Source));

    private IEnumerable<string> OfPosition(Source source, string key) =>
        source == Reads.Beside ? ChannelsOf(key).SelectMany(c => c.Feeds).SelectMany(p => At(p.Position.Id, "adapter"))
        : source == Reads.Grommets
        ? [.. build.Vehicle.Positions.Select(p => BuildInputs.At("grommet", p.Id)), BuildInputs.Extra("grommet")]
        : OfFeed(source, key);

    // Into which output a driver is put, and what feeds that, is open as long as none does.
    private IEnumerable<string> OfFeed(Source source, string key)
    {
        var channels = ChannelsOf(key).ToList();
        var own = At(key, "driver", "inline", "wire", "fed");
        if (source == Reads.Limit)
            return [BuildInputs.At("fed", key), .. channels.SelectMany(c => At(c.Id, "limit").Append(BuildInputs.At("part", c.Device.Id)))];
        if (source == Reads.Output)
            return [BuildInputs.At("fed", key),
                .. channels.SelectMany(c => At(c.Id, "output").Append(BuildInputs.At("part", c.Device.Id)))];
        if (channels.Count == 0 && source != Reads.Loom && source != Reads.BothSides)
            return own.Concat(build.Devices.Select(d => BuildInputs.At("part", d.Id)));
        if (source == Reads.Network)
            return [.. own, .. channels.SelectMany(c => BuildInputs.OfNetwork(build, c)), .. channels.SelectMany(FiltersOf)];
        if (source == Reads.Amplification)
            return channels.SelectMany(BuildInputs.OfSource);
        if (source == Reads.Loom)
            return Loom();
        if (source == Reads.BothSides)
            return BothSides(key);
        // Front against rear: any place may be the other one.
        return source == Reads.Everywhere
            ? build.Channels.SelectMany(c => BuildInputs.OfChannel(build, c))
            .Concat(build.Vehicle.Positions.SelectMany(p => At(p.Id, "driver", "adapter", "fed")))
            : [BuildInputs.All];
    }

    private IEnumerable<string> OfChannel(Source source, Channel channel) =>
        source == Reads.OwnNetwork ? BuildInputs.OfNetwork(build, channel)
        : source == Reads.OwnOutput ? [BuildInputs.At("output", channel.Id), BuildInputs.At("part", channel.Device.Id)]
        : source == Reads.OwnFilters ? FiltersOf(channel)
        : source == Reads.Loom ? Loom()
        : [BuildInputs.All];

    private IEnumerable<string> Loom() =>
    [
        .. build.Vehicle.Positions.SelectMany(p => At(p.Id, "driver", "wire", "plug", "fed", "harness")),
        .. build.Channels.SelectMany(c => At(c.Id, "output", "crossover", "channel-inline")),
        .. build.Devices.SelectMany(d => At(d.Id, "part", "from")),
    ];

    private IEnumerable<string> BothSides(string position) =>
        new[] { position, BuildInputs.Mirror(build.Vehicle, position) }.OfType<string>().SelectMany<string, string>(p =>
        [
            .. At(p, "driver", "adapter", "cup", "harness", "module", "wire", "inline", "gasket", "tape", "screws", "moisture-guard"),
            .. At(p, "plug", "fed"),
            .. ChannelsOf(p).SelectMany(c => BuildInputs.OfChannel(build, c).Append(BuildInputs.At("gain", c.Device.Id))),
        ]);

    // Whether a filter can be made rests on the output's device and on every device before it, and on whether those have a signal for each
    // output behind them.
    private IEnumerable<string> FiltersOf(Channel channel) =>
    [
        BuildInputs.At("output", channel.Id), .. At(channel.Device.Id, "part", "from"),
        .. build.Devices.Where(d => d.Part is not Catalog.Amplifier).SelectMany(d => At(d.Id, "part", "from")),
        .. build.Channels.SelectMany(BuildInputs.OfFilters), .. build.Vehicle.Positions.Select(p => BuildInputs.At("fed", p.Id)),
    ];

    private IEnumerable<string> OfDevice(Source source, string key)
    {
        if (source == Reads.MainCable)
            return At(DeviceFacts.MainCable, "cable", "fuse");
        // The chain before it, whichever it comes to hang on.
        if (source == Reads.Chain)
            return [.. At(key, "part", "from", "remote", "gain"),
                .. build.Devices.Where(d => d.Part is not Catalog.Amplifier).SelectMany(d => At(d.Id, "part", "from"))];
        if (source == Reads.Holders)
            return [.. Cables(), BuildInputs.At("block", DeviceFacts.MainCable), BuildInputs.Extra("fuse-holder"),
                BuildInputs.Extra("distribution")];
        if (source == Reads.ListedCables)
            return Cables();
        if (source == Reads.Loom)
            return Loom();
        if (source == Reads.SignalCables)
            return [BuildInputs.Extra("signal-cable")];
        if (source == Reads.RemoteWires)
            return [BuildInputs.Extra("remote-wire")];
        return source == Reads.Demand ? [BuildInputs.At("part", key), .. Demand()]
            : source == Reads.Devices ? [.. Devices(), BuildInputs.Extra("resistor")]
            : [BuildInputs.All];
    }

    // It is named after the position that it feeds.
    private IEnumerable<string> OfNewChannel(string key) =>
        build.Vehicle.Positions.FirstOrDefault(p => OutputSlots.IsFor(key, p.Id)) is { } fed
        ? [.. At(fed.Id, "driver", "wire", "inline", "module", "fed"),
        .. build.Vehicle.Positions.Select(p => BuildInputs.At("plug", p.Id)), .. Devices()]
        : [BuildInputs.All];

    // A source or a converter that a change brought in.
    private IEnumerable<string> OfNewDevice(Fact fact) => fact.Inputs.Any(i => i.Source == Reads.Demand)
        ? [.. Devices(), .. Demand(), BuildInputs.Extra("resistor")] : Devices();

    private IEnumerable<string> Devices() => build.Devices.SelectMany(d => At(d.Id, "part", "from"));

    private IEnumerable<string> Cables() =>
        [.. build.Devices.Select(d => BuildInputs.At("cable", d.Id)), BuildInputs.At("cable", DeviceFacts.MainCable)];

    private IEnumerable<string> Demand() =>
        [.. build.Channels.SelectMany(c => BuildInputs.OfNetwork(build, c).Concat(BuildInputs.OfSource(c))),
            .. build.Vehicle.Positions.Select(p => BuildInputs.At("fed", p.Id))];

    private IEnumerable<Channel> ChannelsOf(string position) => build.Channels.Where(c => c.Feeds.Any(p => p.Position.Id == position));

    private static IEnumerable<string> At(string key, params string[] words) => words.Select(w => BuildInputs.At(w, key));
}
