using FitCheck.Builds;
using FitCheck.Facts.Devices;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Outputs;
using FitCheck.Facts.Sound;
using FitCheck.Facts.Values;
using FitCheck.Facts.Wiring;
using FitCheck.Rules.Model;
using FitCheck.Suggestions.Choices;

namespace FitCheck.Suggestions.Trials;

/// <summary>
/// On which choices of a build a finding can rest, told from the facts that its rule names. Naming too many costs time; naming too few would hide answers,
/// and a test changes every choice of every reference build to see that no finding outside moves.
/// </summary>
internal sealed class RuleScopes(Build build)
{
    private static readonly Dictionary<string, string[]> Place = new(StringComparer.Ordinal)
    {
        ["has_driver"] = ["driver"],
        ["driver_name"] = ["driver"],
        ["driver_type"] = ["driver"],
        ["role_fits"] = ["driver"],
        ["is_tweeter"] = ["driver"],
        ["is_subwoofer"] = ["driver"],
        ["lowest_crossover"] = ["driver"],
        ["lowest_crossover_slope"] = ["driver"],
        ["tweeter_fs"] = ["driver"],
        ["tweeter_rated_power"] = ["driver"],
        ["rated_power"] = ["driver"],
        ["only_peak_power"] = ["driver"],
        ["driver_impedance"] = ["driver"],
        ["has_adapter"] = ["adapter"],
        ["adapter_name"] = ["adapter"],
        ["adapter_fits_here"] = ["adapter"],
        ["adapter_hand_fits"] = ["adapter"],
        ["adapter_hand"] = ["adapter"],
        ["adapter_material"] = ["adapter"],
        ["adapter_lacks_cable_exit"] = ["adapter"],
        ["in_cup"] = ["cup"],
        ["cup_name"] = ["cup"],
        ["cup_fits_here"] = ["cup"],
        ["cup_cuttable"] = ["cup", "driver"],
        ["harness_name"] = ["harness"],
        ["module_name"] = ["module"],
        ["has_module"] = ["module"],
        ["vehicle_name"] = [],
        ["role"] = [],
        ["place"] = [],
        ["side"] = [],
        ["wet"] = [],
        ["airbag_near"] = [],
        ["pressure_sensor"] = [],
        ["metal_panel"] = [],
        ["drilling_accepted"] = [],
        ["enlarging_accepted"] = [],
        ["trimming_accepted"] = [],
        ["cutting_accepted"] = [],
        ["has_door_card_gap"] = [],
        ["in_door"] = [],
        ["has_foam_under_spacer"] = ["tape"],
        ["has_gasket_ring"] = ["gasket"],
        ["gasket_listed"] = ["gasket", "driver", "cup"],
        ["gasket_name"] = ["gasket", "driver", "cup"],
        ["gasket_on_oval"] = ["gasket", "driver", "cup"],
        ["gasket_rest"] = ["gasket", "driver", "cup"],
        ["gasket_cone_clearance"] = ["gasket", "driver", "cup"],
        ["has_damping"] = ["tape"],
        ["opened_water_shed"] = ["moisture-guard"],
        ["has_new_wire"] = ["wire"],
        ["new_wire_name"] = ["wire"],
        ["new_wire_way"] = ["wire"],
        ["new_wire_spare"] = ["wire"],
        ["uses_factory_plug"] = ["driver", "wire"],
        ["has_harness"] = ["harness"],
        ["is_fed"] = ["fed", "driver"],
        ["box_q"] = ["driver"],
        ["xmax"] = ["driver"],
    };

    // What rests on one thing of the output and on nothing else of it.
    private static readonly Dictionary<string, string[]> OfOutput = new(StringComparer.Ordinal)
    {
        ["has_power_limit"] = ["limit"],
        ["power_limit"] = ["limit"],
        ["on_amplifier"] = ["output"],
        ["feeds_from_factory"] = ["output"],
        ["output_name"] = ["output"],
    };

    // The cables, fuses and blocks of the supply; a kit stands for several of them.
    private static readonly Dictionary<string, string[]> OfSupply = new(StringComparer.Ordinal)
    {
        ["has_power_cable"] = ["cable"],
        ["is_main_cable"] = [],
        ["cable_name"] = ["cable"],
        ["starts_at_battery"] = [],
        ["fuse_distance"] = [],
        ["is_unfused"] = ["cable", "fuse", "main"],
        ["fuse_rating"] = ["cable", "fuse", "main"],
        ["fuse_name"] = ["cable", "fuse", "main"],
        ["has_own_fuse"] = ["cable", "fuse"],
        ["cable_limit"] = ["cable"],
        ["cable_limit_basis"] = ["cable"],
        ["cable_way"] = ["cable"],
        ["cable_spare"] = ["cable"],
        ["ground_name"] = ["cable", "ground"],
        ["ground_way"] = ["cable", "ground"],
        ["ground_spare"] = ["cable", "ground"],
        ["has_ground_cable"] = ["cable", "ground"],
        ["power_area"] = ["cable"],
        ["ground_area"] = ["cable", "ground"],
        ["fuse_fits_holder"] = ["cable", "fuse", "holders"],
        ["voltage_drop"] = ["cable", "ground", "main", "demand"],
        ["demand"] = ["demand"],
        ["standard_fuse"] = ["cable", "fuse", "main", "demand"],
        ["is_amplifier"] = ["part"],
        ["is_converter"] = ["part"],
        ["device_name"] = ["part"],
        ["has_signal_cable"] = ["listed", "signal-cable"],
        ["has_remote_wire"] = ["listed", "remote-wire"],
        ["gain_setting"] = ["gain"],
    };

    private static readonly HashSet<string> Geometry = Names(MountingFacts.Declarations, HoleFacts.Declarations, AimFacts.Declarations);
    private static readonly HashSet<string> Screws = Names(ScrewFacts.Declarations), Gaskets = Names(GasketFacts.Declarations), Cups = Names(CupFacts.Declarations);
    private static readonly HashSet<string> Wiring = Names(WiringFacts.Declarations), Levels = Names(LevelFacts.Declarations), Leads = Names(LeadFacts.Declarations);
    private static readonly HashSet<string> Arriving = new(StringComparer.Ordinal)
    {
        "tweeter_full_range", "tweeter_corner", "tweeter_slope", "tweeter_peak", "high_passes", "high_pass_names", "factory_tweeter_capacitor",
    };

    private static readonly HashSet<string> Ratings = new(StringComparer.Ordinal)
    {
        "lowest_load", "bridged", "bridgeable", "has_converter", "only_peak_rating", "peak_power", "supply_ceiling",
    };

    private static readonly HashSet<string> Filters = Names(FilterFacts.Declarations);

    private static readonly HashSet<string> Signals = Names(SignalFacts.Declarations);

    private readonly Dictionary<(string, string), IReadOnlySet<string>> _known = [];

    /// <summary>The atoms that a rule's finding on a subject rests on.</summary>
    public IReadOnlySet<string> Of(Rule rule, string key)
    {
        if (!_known.TryGetValue((rule.Id, key), out var atoms))
            _known[(rule.Id, key)] = atoms = rule.Names.SelectMany(fact => OfFact(rule.Subject, fact, key)).ToHashSet(StringComparer.Ordinal);
        return atoms;
    }

    private IEnumerable<string> OfFact(Subject subject, string fact, string key) => subject switch
    {
        Subject.Position => OfPosition(fact, key),
        Subject.Channel => build.Channels.FirstOrDefault(c => c.Id == key) is { } channel ? OfOwnChannel(channel, fact) : OfNewChannel(key),
        Subject.Device => OfDevice(fact, key),
        Subject.Driver => build.Placed.Select(p => Atoms.At("driver", p.Position.Id)),
        _ => [Atoms.All],
    };

    private IEnumerable<string> OfOwnChannel(Channel channel, string fact) =>
        fact.StartsWith("load_", StringComparison.Ordinal) || fact == "leftover_count" ? Atoms.OfNetwork(build, channel)
        : fact.StartsWith("stated_", StringComparison.Ordinal) || Ratings.Contains(fact) ? [Atoms.At("output", channel.Id), Atoms.At("part", channel.Device.Id)]
        : Filters.Contains(fact) ? [.. FiltersOf(channel), .. Atoms.OfNetwork(build, channel)]
        : [.. Atoms.OfChannel(build, channel), .. FiltersOf(channel)];

    private IEnumerable<string> OfPosition(string fact, string key)
    {
        if (Place.TryGetValue(fact, out var words))
            return words.Select(w => Atoms.At(w, key));
        if (OfOutput.TryGetValue(fact, out var ofOutput))
            return [Atoms.At("fed", key), .. ChannelsOf(key).SelectMany(c => ofOutput.Select(w => Atoms.At(w, c.Id)).Append(Atoms.At("part", c.Device.Id)))];
        if (Geometry.Contains(fact))
            return At(key, "driver", "adapter", "cup");
        if (Screws.Contains(fact))
            return At(key, "driver", "adapter", "cup", "screws");
        if (Gaskets.Contains(fact))
            return At(key, "driver", "adapter", "cup", "gasket");
        if (Cups.Contains(fact))
            return At(key, "driver", "cup", "module");
        if (Leads.Contains(fact))
            return At(key, "driver", "adapter", "harness", "wire");
        if (fact == "has_rubber_passage")
            return [.. build.Vehicle.Positions.Select(p => Atoms.At("grommet", p.Id)), Atoms.Extra("grommet")];
        if (Wiring.Contains(fact))
            return At(key, "driver", "harness", "wire");
        var channels = ChannelsOf(key).ToList();
        var own = At(key, "driver", "inline", "wire", "fed");
        if (fact is "wire_loss" or "impedance_loss" or "factory_impedance")
            return own;
        // Into which output it is put, and what feeds that, is open as long as none does.
        if (channels.Count == 0)
            return own.Concat(build.Devices.Select(d => Atoms.At("part", d.Id)));
        own = own.Concat(channels.SelectMany(c => Atoms.OfNetwork(build, c))).Concat(channels.SelectMany(FiltersOf));
        if (Arriving.Contains(fact))
            return own;
        if (Levels.Contains(fact) && fact is not ("is_rear_beside_front" or "rear_over_front" or "level_at_full_power"))
            return own.Concat(channels.SelectMany(c => c.Feeds).SelectMany(p => At(p.Position.Id, "adapter")));
        own = own.Concat(channels.SelectMany(Atoms.OfSource));
        if (!Levels.Contains(fact))
            return own;
        // Front against rear: any place may be the other one.
        return own.Concat(build.Channels.SelectMany(c => Atoms.OfChannel(build, c))).Concat(build.Vehicle.Positions.SelectMany(p => At(p.Id, "driver", "adapter", "fed")));
    }

    // Whether a filter can be made rests on the output's device and on every device before it, and on whether those have a signal for each output behind them.
    private IEnumerable<string> FiltersOf(Channel channel) =>
    [
        Atoms.At("output", channel.Id), .. At(channel.Device.Id, "part", "from"), .. build.Devices.Where(d => d.Part is not Catalog.Amplifier).SelectMany(d => At(d.Id, "part", "from")),
        .. build.Channels.SelectMany(Atoms.OfFilters), .. build.Vehicle.Positions.Select(p => Atoms.At("fed", p.Id)),
    ];

    private IEnumerable<string> OfDevice(string fact, string key)
    {
        // A source or a converter that a change brought in.
        if (key != DeviceFacts.MainCable && !build.Devices.Any(d => d.Id == key))
            return [.. build.Devices.SelectMany(d => At(d.Id, "part", "from")), .. fact == "source_load" ? [.. Demand(), Atoms.Extra("resistor")] : Array.Empty<string>()];
        if (OfSupply.TryGetValue(fact, out var words))
            return words.SelectMany(w => OfSupplyWord(w, key));
        if (fact is "source_load" or "line_channels" or "line_channels_used" || !Signals.Contains(fact))
            return [.. build.Devices.SelectMany(d => At(d.Id, "part", "from")), .. Demand(), Atoms.Extra("resistor")];
        // The chain before it, whichever it comes to hang on.
        return [.. At(key, "part", "from", "remote", "gain"), .. build.Devices.Where(d => d.Part is not Catalog.Amplifier).SelectMany(d => At(d.Id, "part", "from"))];
    }

    // It is named after the position that it feeds.
    private IEnumerable<string> OfNewChannel(string key) => build.Vehicle.Positions.FirstOrDefault(p => OutputSlots.IsFor(key, p.Id)) is { } fed
        ? [.. At(fed.Id, "driver", "wire", "inline", "module", "fed"), .. build.Vehicle.Positions.Select(p => Atoms.At("plug", p.Id)), .. build.Devices.SelectMany(d => At(d.Id, "part", "from"))]
        : [Atoms.All];

    private IEnumerable<string> OfSupplyWord(string word, string key) => word switch
    {
        "main" => At(DeviceFacts.MainCable, "cable", "fuse"),
        "holders" => [.. Cables(), Atoms.At("block", DeviceFacts.MainCable), Atoms.Extra("fuse-holder"), Atoms.Extra("distribution")],
        "listed" => Cables(),
        "signal-cable" or "remote-wire" => [Atoms.Extra(word)],
        "demand" => [Atoms.At("part", key), .. Demand()],
        _ => At(key, word),
    };

    private IEnumerable<string> Cables() => [.. build.Devices.Select(d => Atoms.At("cable", d.Id)), Atoms.At("cable", DeviceFacts.MainCable)];

    private IEnumerable<string> Demand() => [.. build.Channels.SelectMany(c => Atoms.OfNetwork(build, c).Concat(Atoms.OfSource(c))), .. build.Vehicle.Positions.Select(p => Atoms.At("fed", p.Id))];

    private IEnumerable<Channel> ChannelsOf(string position) => build.Channels.Where(c => c.Feeds.Any(p => p.Position.Id == position));

    private static IEnumerable<string> At(string key, params string[] words) => words.Select(w => Atoms.At(w, key));

    private static HashSet<string> Names(params IReadOnlyList<FactDeclaration>[] declarations) => declarations.SelectMany(d => d).Select(d => d.Name).ToHashSet(StringComparer.Ordinal);
}
