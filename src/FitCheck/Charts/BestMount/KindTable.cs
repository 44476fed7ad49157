using FitCheck.Charts.Pairs;
using FitCheck.Facts.Values;

namespace FitCheck.Charts.BestMount;

/// <summary>A place where a spacer or cup goes: the facts and the judgement of both that no driver changes.</summary>
internal readonly record struct Candidate(int Place, Brief[] Facts, PartialVerdict Said);

/// <summary>For one kind of pair all that needs no driver, worked out before the drivers are walked through.</summary>
internal sealed class KindTable
{
    private const RestsOn MountAndPlace = RestsOn.Mount | RestsOn.Place;

    /// <summary>Facts of each spacer or cup.</summary>
    public Brief[][] Mounts { get; }
    /// <summary>Facts of each place.</summary>
    public Brief[][] Places { get; }
    /// <summary>What is said of each place.</summary>
    public PartialVerdict[] Said { get; }
    /// <summary>For each spacer or cup the places where it goes.</summary>
    public Candidate[][] Candidates { get; }
    /// <summary>The numbers of those places, which are soon run through.</summary>
    public int[][] Covered { get; }
    /// <summary>
    /// For each of them which of the judgements is that of the spacer or cup there; a hundred thousand are often but a few hundred.
    /// </summary>
    public int[][] Judged { get; }
    /// <summary>How many kinds of spacers or cups there are of which all carry every driver in the same way.</summary>
    public int Kinds { get; }
    /// <summary>The spacers or cups that are asked about at any place.</summary>
    public ChartedMount[] Asked { get; }
    /// <summary>Every judgement of a spacer or cup at a place once.</summary>
    public PartialVerdict[] Judgements { get; }

    /// <param name="rules">Of this kind.</param>
    /// <param name="places">Every place.</param>
    /// <param name="mounts">Every spacer or cup of the kind; none for the bare panel.</param>
    /// <param name="covered">The places that one is for, in their order.</param>
    /// <param name="pair">To walk with; its driver stands for all of the kind.</param>
    /// <param name="sieved">False to ask about every one, also where a cheaper one does the same.</param>
    public KindTable(KindRules rules, ChartedPlace[] places, ChartedMount[] mounts, Func<ChartedMount, IEnumerable<int>> covered,
        PlacedPairFacts pair, bool sieved)
    {
        var sheet = rules.Sheet();
        Mounts = new Brief[mounts.Length][];
        Places = new Brief[places.Length][];
        Said = new PartialVerdict[places.Length];
        Candidates = new Candidate[mounts.Length][];
        Covered = new int[mounts.Length][];
        Judged = new int[mounts.Length][];
        var judgements = new Dictionary<PartialVerdict, int>();
        var kinds = new Dictionary<string, int>(StringComparer.Ordinal);
        var facts = new Dictionary<Brief[], int>(new SameFacts());
        var known = new HashSet<(int Place, int Alike, int Facts, int Said)>();
        for (var i = 0; i < places.Length; i++)
        {
            pair.Set(places[i], mounts.Length > 0 ? mounts[0] : null, new DriverOnMount(mounts.Length > 0 ? mounts[0] : null)
                .Turn(pair.Driver));
            rules.Work(RestsOn.Place, pair, sheet);
            Places[i] = rules.Taken(RestsOn.Place, sheet);
            Said[i] = rules.Ask(RestsOn.Nothing, pair, sheet).With(rules.Ask(RestsOn.Place, pair, sheet));
        }
        foreach (var mount in mounts)
        {
            var mated = new DriverOnMount(mount).Turn(pair.Driver);
            pair.Set(places[0], mount, mated);
            rules.Work(RestsOn.Mount, pair, sheet);
            Mounts[mount.Index] = rules.Taken(RestsOn.Mount, sheet);
            var ofMount = rules.Ask(RestsOn.Mount, pair, sheet);
            var alike = mount.Alike = !sieved || !rules.IsWorkedByFigures ? mount.Index
                : Number(kinds, mount.Likeness() + rules.HandedOn(sheet));
            Candidates[mount.Index] =
                [.. covered(mount).Select(place => Candidate(place, mount, mated, ofMount)).Where(c => IsFirst(c, alike))];
            Covered[mount.Index] = Array.ConvertAll(Candidates[mount.Index], c => c.Place);
            Judged[mount.Index] = Array.ConvertAll(Candidates[mount.Index], c => Number(judgements, c.Said));
        }
        Judgements = [.. judgements.Keys];
        Kinds = mounts.Length == 0 ? 0 : mounts.Max(m => m.Alike) + 1;
        Asked = Array.FindAll(mounts, m => Candidates[m.Index].Length > 0);

        // Of those that carry every driver alike, and of which the same is said here, none is better than the first.
        bool IsFirst(in Candidate candidate, int alike) => !sieved
            || known.Add((candidate.Place, alike, Number(facts, candidate.Facts), Number(judgements, candidate.Said)));

        static int Number<T>(Dictionary<T, int> numbers, T value) where T : notnull =>
            numbers.TryGetValue(value, out var number) ? number : numbers[value] = numbers.Count;

        Candidate Candidate(int place, ChartedMount mount, DriverOnMount mated, in PartialVerdict ofMount)
        {
            pair.Set(places[place], mount, mated);
            rules.Put(RestsOn.Place, Places[place], sheet);
            rules.Work(MountAndPlace, pair, sheet);
            return new Candidate(place, rules.Taken(MountAndPlace, sheet), Said[place].With(ofMount)
                .With(rules.Ask(MountAndPlace, pair, sheet)));
        }
    }

    private sealed class SameFacts : IEqualityComparer<Brief[]>
    {
        public bool Equals(Brief[]? x, Brief[]? y) => x.AsSpan().SequenceEqual(y);

        public int GetHashCode(Brief[] facts)
        {
            var hash = new HashCode();
            foreach (var fact in facts)
                hash.Add(fact);
            return hash.ToHashCode();
        }
    }
}
