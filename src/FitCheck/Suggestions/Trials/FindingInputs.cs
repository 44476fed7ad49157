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
        Subject.Position => Chosen(fact).SelectMany(s => OfPosition(s, key)),
        Subject.Channel => build.Channels.FirstOrDefault(c => c.Id == key) is { } channel
            ? Chosen(fact).SelectMany(s => OfChannel(s, channel)) : OfNewChannel(key),
        // A source or a converter that a change brought in.
        Subject.Device => key == DeviceFacts.MainCable || build.Devices.Any(d => d.Id == key)
            ? Chosen(fact).SelectMany(s => OfDevice(s, key)) : [.. Devices(), .. Demand(), BuildInputs.Extra("resistor")],
        Subject.Driver => build.Placed.Select(p => BuildInputs.At("driver", p.Position.Id)),
        _ => [BuildInputs.All],
    };

    // What no choice changes: data of the vehicle, what was measured, lengths and boxes of the build.
    private static readonly Source[] Given = [Reads.Place, Reads.Vehicle, Reads.Measured, Reads.Work, Reads.Treatment, Reads.Box];

    private static IEnumerable<Source> Chosen(Fact fact) => fact.Inputs.Select(i => i.Source).Except(Given);

    private IEnumerable<string> OfPosition(Source source, string key)
    {
        if (source == Reads.Driver || source == Reads.DriverThere)
            return At(key, "driver");
        if (source == Reads.Adapter || source == Reads.AdapterThere || source == Reads.Beside)
            return source == Reads.Beside ? ChannelsOf(key).SelectMany(c => c.Feeds).SelectMany(p => At(p.Position.Id, "adapter"))
                : At(key, "adapter");
        if (source == Reads.Cup || source == Reads.CupThere)
            return At(key, "cup");
        if (source == Reads.Mounted || source == Reads.Under || source == Reads.OnPanel)
            return At(key, "driver", "adapter", "cup");
        if (Words.TryGetValue(source, out var word))
            return At(key, word);
        if (source == Reads.Grommets)
            return [.. build.Vehicle.Positions.Select(p => BuildInputs.At("grommet", p.Id)), BuildInputs.Extra("grommet")];
        return OfFeed(source, key);
    }

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
        if (channels.Count == 0)
            return own.Concat(build.Devices.Select(d => BuildInputs.At("part", d.Id)));
        if (source == Reads.Network)
            return [.. own, .. channels.SelectMany(c => BuildInputs.OfNetwork(build, c)), .. channels.SelectMany(FiltersOf)];
        if (source == Reads.Amplification)
            return channels.SelectMany(BuildInputs.OfSource);
        // Front against rear: any place may be the other one.
        return source == Reads.Everywhere
            ? build.Channels.SelectMany(c => BuildInputs.OfChannel(build, c))
            .Concat(build.Vehicle.Positions.SelectMany(p => At(p.Id, "driver", "adapter", "fed")))
            : [BuildInputs.All];
    }

    private IEnumerable<string> OfChannel(Source source, Channel channel) =>
        source == Reads.OwnNetwork ? BuildInputs.OfNetwork(build, channel)
        : source == Reads.OwnOutput
        ? [BuildInputs.At("limit", channel.Id), BuildInputs.At("output", channel.Id), BuildInputs.At("part", channel.Device.Id)]
        : source == Reads.OwnFilters ? FiltersOf(channel)
        : [BuildInputs.All];

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
        if (source == Reads.Supply)
            return [];
        if (source == Reads.PowerCable)
            return At(key, "cable");
        if (source == Reads.Fuse)
            return At(key, "cable", "fuse");
        if (source == Reads.GroundCable)
            return At(key, "cable", "ground");
        if (source == Reads.MainCable)
            return At(DeviceFacts.MainCable, "cable", "fuse");
        if (source == Reads.Gain)
            return At(key, "gain");
        if (source == Reads.Device)
            return At(key, "part");
        // The chain before it, whichever it comes to hang on.
        if (source == Reads.Chain)
            return [.. At(key, "part", "from", "remote", "gain"),
                .. build.Devices.Where(d => d.Part is not Catalog.Amplifier).SelectMany(d => At(d.Id, "part", "from"))];
        if (source == Reads.Holders)
            return [.. Cables(), BuildInputs.At("block", DeviceFacts.MainCable), BuildInputs.Extra("fuse-holder"),
                BuildInputs.Extra("distribution")];
        if (source == Reads.ListedCables)
            return Cables();
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

    // Sources that are one choice of a position.
    private static readonly Dictionary<Source, string> Words = new(ReferenceEqualityComparer.Instance)
    {
        [Reads.Harness] = "harness",
        [Reads.Module] = "module",
        [Reads.Gasket] = "gasket",
        [Reads.Tape] = "tape",
        [Reads.MoistureGuard] = "moisture-guard",
        [Reads.Screws] = "screws",
        [Reads.Wire] = "wire",
        [Reads.Inline] = "inline",
        [Reads.Feed] = "fed",
    };

    private IEnumerable<string> Devices() => build.Devices.SelectMany(d => At(d.Id, "part", "from"));

    private IEnumerable<string> Cables() =>
        [.. build.Devices.Select(d => BuildInputs.At("cable", d.Id)), BuildInputs.At("cable", DeviceFacts.MainCable)];

    private IEnumerable<string> Demand() =>
        [.. build.Channels.SelectMany(c => BuildInputs.OfNetwork(build, c).Concat(BuildInputs.OfSource(c))),
            .. build.Vehicle.Positions.Select(p => BuildInputs.At("fed", p.Id))];

    private IEnumerable<Channel> ChannelsOf(string position) => build.Channels.Where(c => c.Feeds.Any(p => p.Position.Id == position));

    private static IEnumerable<string> At(string key, params string[] words) => words.Select(w => BuildInputs.At(w, key));
}
