using FitCheck.Catalog;
using FitCheck.Foundation.Problems;

namespace FitCheck.Builds;

/// <summary>
/// Reads the supply of the amplifiers. A kit stands for the cable, fuse and ground cable in its box; a kit among the extras counts where
/// nothing is named.
/// </summary>
internal sealed class SupplyReader(PartsCatalog catalog, ProblemList problems)
{
    public Supply Read(Fields build, IReadOnlyList<Device> devices, IReadOnlyList<QuoteLine> extras)
    {
        var amplifiers = devices.Where(d => d.Part is Amplifier).ToList();
        var runs = new Dictionary<string, SupplyRun>(StringComparer.Ordinal);
        foreach (var f in build.Each("devices"))
        {
            if (f.Text("id") is { } id && amplifiers.Exists(d => d.Id == id.Value))
                runs[id.Value] = Run(f, "power_cable", "power_length");
        }
        var given = build.Inner("supply");
        var main = given is null ? null : Run(given, "cable", "length");
        var distribution = given is null ? null : Choose(given.Text("distribution"), "distribution");
        var bought = extras.Where(e => e.Part is WiringPart).Select(e => new Chosen<WiringPart>((WiringPart)e.Part, e.At)).ToList();
        if (main?.Cable is null && runs.Values.All(r => r.Cable is null) && bought.Find(b => IsKit(b.Part)) is { } kit)
        {
            if (runs.Count == 1)
                runs[amplifiers[0].Id] = FromKit(runs[amplifiers[0].Id], kit);
            else if (runs.Count > 1)
                main = FromKit(main ?? new SupplyRun(), kit) with { Ground = null };
        }
        if (main?.Cable is null)
            main = null;
        else
            distribution ??= bought.Find(b => b.Part.Type == "distribution");
        var named = Parts([.. runs.Values, .. main is null ? [] : new[] { main }]).Concat(bought.Select(b => b.Part)).ToList();
        if (distribution is not null)
            named.Add(distribution.Part);
        var kits = KitsNamed(build).ToList();
        named.AddRange(kits);
        // One that is named for a cable and bought besides is one kit.
        kits = [.. kits.GroupBy(k => k.Id, StringComparer.Ordinal)
            .SelectMany(k => k.Skip(extras.Where(e => e.Part.Id == k.Key).Sum(e => e.Packs * e.Part.Pack)))];
        named.AddRange(named.Where(IsKit).ToList().SelectMany(Contents));
        List<(WiringPart Part,
            int Count)> pieces = [.. extras.Where(e => e.Part is WiringPart).Select(e => ((WiringPart)e.Part, e.Packs * e.Part.Pack)),
                .. kits.Select(k => (k, 1))];
        pieces.AddRange(pieces.Where(p => IsKit(p.Part)).ToList().SelectMany(k => Inside(k.Part).Select(c => (c.Part, c.Count * k.Count))));
        return new Supply(main, distribution, runs, [.. named.DistinctBy(p => p.Id)], pieces, kits);
    }

    private SupplyRun Run(Fields f, string cable, string length)
    {
        var run = new SupplyRun
        {
            Length = f.Length(length),
            Place = f.Text("place"),
            Fuse = Choose(f.Text("fuse"), "fuse"),
            FuseDistance = f.Length("fuse_distance"),
            Ground = Choose(f.Text("ground_cable"), "power-cable"),
            GroundLength = f.Length("ground_length"),
        };
        return Choose(f.Text(cable), "power-cable", "power-kit") is not { } chosen ? run
            : IsKit(chosen.Part) ? FromKit(run, chosen) : run with { Cable = chosen };
    }

    private SupplyRun FromKit(SupplyRun run, Chosen<WiringPart> kit)
    {
        var contents = Contents(kit.Part).ToList();
        // The longer cable of a kit goes to the battery, the shorter one to ground.
        var cables = contents.FindAll(c => c.Type == "power-cable");
        cables.Sort((a, b) => (b.Length?.Si ?? 0).CompareTo(a.Length?.Si ?? 0));
        return run with
        {
            Cable = new Chosen<WiringPart>(cables.Count > 0 ? cables[0] : kit.Part, kit.At),
            Fuse = run.Fuse ?? In(contents.Find(c => c.Type == "fuse")),
            Ground = run.Ground ?? In(cables.Count > 1 ? cables[1] : null),
        };

        Chosen<WiringPart>? In(WiringPart? part) => part is null ? null : new Chosen<WiringPart>(part, kit.At);
    }

    private IEnumerable<WiringPart> KitsNamed(Fields build)
    {
        var texts = build.Each("devices").Select(d => d.Text("power_cable")).Append(build.Inner("supply")?.Text("cable"));
        return texts.OfType<Located<string>>().Select(t => catalog.Find(t.Value)).OfType<WiringPart>().Where(IsKit);
    }

    private Chosen<WiringPart>? Choose(Located<string>? id, params string[] types) =>
        id is not null && catalog.Resolve<WiringPart>(id, "wiring", problems) is { } part
            ? OfType(new Chosen<WiringPart>(part, id.At), problems, types) : null;

    /// <summary>Wiring when it is of one of some types; anything else is told.</summary>
    public static Chosen<WiringPart>? OfType(Chosen<WiringPart>? chosen, ProblemList problems, params string[] types)
    {
        if (chosen is null || types.Contains(chosen.Part.Type, StringComparer.Ordinal))
            return chosen;
        // Of what sort an entry is that does not say so, is told of the entry.
        if (chosen.Part.Type.Length > 0)
            problems.Error(chosen.At,
                $"`{chosen.Part.Id}` is {Called(chosen.Part.Type)}, expected {string.Join(" or ", types.Select(Called))}");
        return null;
    }

    private static string Called(string type) =>
        PartsCatalog.Article(type == "distribution" ? "distribution block" : type.Replace('-', ' '));

    private IEnumerable<WiringPart> Contents(WiringPart kit) => Inside(kit).Select(c => c.Part);

    private IEnumerable<(WiringPart Part, int Count)> Inside(WiringPart kit)
    {
        foreach (var contained in kit.Contains)
        {
            if (catalog.Find(contained.Part.Value) is WiringPart part)
                yield return (part, contained.Quantity);
        }
    }

    private static IEnumerable<WiringPart> Parts(IEnumerable<SupplyRun> runs) =>
        runs.SelectMany(r => new[] { r.Cable, r.Fuse, r.Ground }).OfType<Chosen<WiringPart>>().Select(c => c.Part);

    private static bool IsKit(WiringPart part) => part.Type == "power-kit";
}
