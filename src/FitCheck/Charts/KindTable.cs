using FitCheck.Facts;
using FitCheck.Rules.Conditions;

namespace FitCheck.Charts;

/// <summary>A spacer or cup at a place: the facts and the judgement that no driver changes.</summary>
internal readonly record struct Candidate(int Mount, Brief[] Facts, Partial Said);

/// <summary>For one kind of pair all that needs no driver, worked out before the drivers are walked through.</summary>
internal sealed class KindTable
{
    private const RestsOn MountAndPlace = RestsOn.Mount | RestsOn.Place;

    /// <summary>Facts of each spacer or cup.</summary>
    public Brief[][] Mounts { get; }
    /// <summary>Facts of each place.</summary>
    public Brief[][] Places { get; }
    /// <summary>What is said of each place.</summary>
    public Partial[] Said { get; }
    /// <summary>What may carry a driver at each place, in the order of preference.</summary>
    public Candidate[][] Candidates { get; }

    /// <param name="rules">Of this kind.</param>
    /// <param name="places">Every place.</param>
    /// <param name="mounts">Every spacer or cup of the kind; none for the bare panel.</param>
    /// <param name="covers">Whether one is for a place.</param>
    /// <param name="spot">To walk with; its driver stands for all of the kind.</param>
    public KindTable(KindRules rules, PlaceSide[] places, MountSide[] mounts, Func<MountSide, PlaceSide, bool> covers, Spot spot)
    {
        var sheet = rules.Sheet();
        Mounts = new Brief[mounts.Length][];
        Places = new Brief[places.Length][];
        Said = new Partial[places.Length];
        Candidates = new Candidate[places.Length][];
        var ofMounts = new Partial[mounts.Length];
        foreach (var mount in places.Length > 0 ? mounts : [])
        {
            spot.Set(places[0], mount, new Mated(spot.Driver, mount));
            rules.Work(RestsOn.Mount, spot, sheet);
            Mounts[mount.Index] = rules.Taken(RestsOn.Mount, sheet);
            ofMounts[mount.Index] = rules.Ask(RestsOn.Mount, spot, sheet);
        }
        for (var i = 0; i < places.Length; i++)
        {
            spot.Set(places[i], mounts.Length > 0 ? mounts[0] : null, new Mated(spot.Driver, mounts.Length > 0 ? mounts[0] : null));
            rules.Work(RestsOn.Place, spot, sheet);
            Places[i] = rules.Taken(RestsOn.Place, sheet);
            var said = Said[i] = rules.Ask(RestsOn.Nothing, spot, sheet).With(rules.Ask(RestsOn.Place, spot, sheet));
            var candidates = new List<Candidate>();
            foreach (var mount in mounts)
            {
                if (!covers(mount, places[i]))
                    continue;
                spot.Set(places[i], mount, new Mated(spot.Driver, mount));
                rules.Put(RestsOn.Mount, Mounts[mount.Index], sheet);
                rules.Work(MountAndPlace, spot, sheet);
                candidates.Add(new Candidate(mount.Index, rules.Taken(MountAndPlace, sheet), said.With(ofMounts[mount.Index]).With(rules.Ask(MountAndPlace, spot, sheet))));
            }
            Candidates[i] = [.. candidates];
        }
    }
}
