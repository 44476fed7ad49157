using FitCheck.Catalog;
using FitCheck.Charts.Pairs;
using FitCheck.Facts.Fitting;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;

namespace FitCheck.Charts;

/// <summary>Makes the rows of a chart from the pairs that were found: only here a finding is worded, for the pairs that are told.</summary>
internal sealed class RowMaker
{
    private readonly IReadOnlyList<(Vehicle Vehicle, Position Position)> _places;
    private readonly IReadOnlyList<Driver> _drivers;
    private readonly (Part? Mount, PairVerdict Outcome)[] _found;
    private readonly PairJudge _judge;
    private readonly RuleSet _rules;
    private readonly Dictionary<string, List<string>> _soldIn = new(StringComparer.Ordinal);

    public RowMaker(IReadOnlyList<(Vehicle Vehicle, Position Position)> places, IReadOnlyList<Driver> drivers,
        (Part? Mount, PairVerdict Outcome)[] found, PairJudge judge, RuleSet rules, PartsCatalog catalog)
    {
        (_places, _drivers, _found, _judge, _rules) = (places, drivers, found, judge, rules);
        Sets = [.. catalog.IdsOf("component-set").Select(catalog.Find).OfType<ComponentSet>()];
        foreach (var set in Sets)
        {
            foreach (var member in new[] { set.Woofer, set.Tweeter }.OfType<Located<string>>())
                (_soldIn.TryGetValue(member.Value, out var known) ? known : _soldIn[member.Value] = []).Add(set.Id);
        }
    }

    public IReadOnlyList<ComponentSet> Sets { get; }

    /// <summary>The numbers of the pairs whose driver is of a type that suits the role of the position; or of all.</summary>
    public IReadOnlyList<int> Suited(bool anyType) =>
        [.. Enumerable.Range(0, _found.Length).Where(i => anyType
            || PlaceFacts.Suits(_drivers[i % _drivers.Count].Type, _places[i / _drivers.Count].Position.Role))];

    public (Vehicle Vehicle, Position Position) Place(int pair) => _places[pair / _drivers.Count];

    public Driver Driver(int pair) => _drivers[pair % _drivers.Count];

    public Status Status(int pair) => _found[pair].Outcome.Status;

    public ChartRow Row(int pair)
    {
        var (vehicle, position) = Place(pair);
        var (driver, mount) = (Driver(pair), _found[pair].Mount);
        var findings = _judge.Findings(new Pair(vehicle, position, driver, mount));
        return new ChartRow
        {
            Vehicle = vehicle,
            Position = position,
            Driver = driver,
            Sets = _soldIn.GetValueOrDefault(driver.Id) ?? [],
            Mount = mount,
            Status = Status(pair),
            Findings = findings,
            Work = [.. findings.Where(f => f.Status == Findings.Status.Warn && _rules.Find(f.Rule)!.TellsOfWork)],
        };
    }
}
