using FitCheck.Catalog;
using FitCheck.Charts.Pairs;
using FitCheck.Facts.Fitting;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;

namespace FitCheck.Charts;

/// <summary>
/// Makes the rows of a chart from the pairs that were found: only here a finding is worded, for the pairs that are told. Of drivers it
/// keeps no more than their ids and types; a row that needs more has it read again.
/// </summary>
internal sealed class RowMaker
{
    /// <summary>Some 20 kB each with all findings; a vehicle has some hundreds among a thousand parts.</summary>
    public const int Few = 5_000;

    private readonly IReadOnlyList<(Vehicle Vehicle, Position Position)> _places;
    private readonly IReadOnlyList<string> _drivers;
    private readonly string[] _types;
    private readonly (Part? Mount, PairVerdict Outcome)[] _found;
    private readonly PairJudge _judge;
    private readonly RuleSet _rules;
    private readonly PartsCatalog _catalog;
    private readonly Dictionary<string, List<string>> _soldIn = new(StringComparer.Ordinal);
    // What was asked for last is often asked for again.
    private volatile Driver? _lastDriver;
    private volatile Tuple<int, IReadOnlyList<Finding>>? _last;

    public RowMaker(IReadOnlyList<(Vehicle Vehicle, Position Position)> places, IReadOnlyList<string> drivers, PairJudge judge,
        RuleSet rules, PartsCatalog catalog)
    {
        (_places, _drivers, _judge, _rules, _catalog) = (places, drivers, judge, rules, catalog);
        (_types, _found) = (new string[drivers.Count], new (Part?, PairVerdict)[places.Count * drivers.Count]);
        Sets = [.. catalog.IdsOf("component-set").Select(catalog.Find).OfType<ComponentSet>()];
        foreach (var set in Sets)
        {
            foreach (var member in new[] { set.Woofer, set.Tweeter }.OfType<Located<string>>())
                (_soldIn.TryGetValue(member.Value, out var known) ? known : _soldIn[member.Value] = []).Add(set.Id);
        }
    }

    public IReadOnlyList<ComponentSet> Sets { get; }

    /// <summary>How many drivers were added.</summary>
    public int Found { get; private set; }

    /// <summary>Adds what was found of the next drivers, by place, then driver.</summary>
    public void Add(IReadOnlyList<Driver> drivers, (Part? Mount, PairVerdict Outcome)[] found)
    {
        for (var i = 0; i < drivers.Count; i++)
        {
            _types[Found + i] = drivers[i].Type;
            for (var place = 0; place < _places.Count; place++)
                _found[(place * _drivers.Count) + Found + i] = found[(place * drivers.Count) + i];
        }
        Found += drivers.Count;
    }

    /// <summary>The numbers of the pairs whose driver is of a type that suits the role of the position; or of all.</summary>
    public IReadOnlyList<int> Suited(bool anyType) =>
        [.. Enumerable.Range(0, _found.Length).Where(i => anyType
            || PlaceFacts.Suits(_types[i % _drivers.Count], _places[i / _drivers.Count].Position.Role))];

    public (Vehicle Vehicle, Position Position) Place(int pair) => _places[pair / _drivers.Count];

    public string DriverId(int pair) => _drivers[pair % _drivers.Count];

    public Driver Driver(int pair)
    {
        if (_lastDriver is { } last && last.Id == DriverId(pair))
            return last;
        return _lastDriver = Read(pair);
    }

    public Part? Mount(int pair) => _found[pair].Mount;

    public Status Status(int pair) => _found[pair].Outcome.Status;

    public IReadOnlyList<Finding> Findings(int pair)
    {
        if (_last is { } last && last.Item1 == pair)
            return last.Item2;
        var findings = Judged(pair, Driver(pair));
        _last = Tuple.Create(pair, findings);
        return findings;
    }

    public IReadOnlyList<Finding> Work(IReadOnlyList<Finding> findings) =>
        [.. findings.Where(f => f.Status == FitCheck.Findings.Status.Warn && _rules.Find(f.Rule)!.TellsOfWork)];

    /// <summary>The row of a pair.</summary>
    /// <param name="pair">Its number.</param>
    /// <param name="isKept">Whether it keeps its driver and its findings.</param>
    public ChartRow Row(int pair, bool isKept)
    {
        var (vehicle, position) = Place(pair);
        // Many threads make rows; what was asked for last is of no use to any of them.
        var driver = Read(pair);
        var findings = Judged(pair, driver);
        return new ChartRow(this, pair, driver, findings, isKept)
        {
            Vehicle = vehicle,
            Position = position,
            Sets = _soldIn.GetValueOrDefault(driver.Id) ?? [],
            Mount = Mount(pair),
            Status = Status(pair),
        };
    }

    private Driver Read(int pair) => (Driver)_catalog.InPassing(DriverId(pair))!;

    private IReadOnlyList<Finding> Judged(int pair, Driver driver)
    {
        var (vehicle, position) = Place(pair);
        return _judge.Findings(new Pair(vehicle, position, driver, Mount(pair)));
    }
}
