using FitCheck.Catalog;
using FitCheck.Foundation.Problems;

namespace FitCheck.Builds;

/// <summary>Reads `expect`. A place that the build does not have would be missed for ever, so it is told.</summary>
internal sealed class ExpectationReader(PartsCatalog catalog, Vehicle vehicle, IReadOnlyList<Device> devices,
    IReadOnlyList<Channel> channels, ProblemList problems)
{
    // What the findings of the whole build are said of, and the verdict that leaves none.
    private const string Whole = "build", Passing = "pass";

    private string[]? _names;

    public Expectation? Read(Fields build)
    {
        if (build.Inner("expect") is not { } f || f.Text("verdict") is not { } verdict)
            return null;
        List<ExpectedFinding>? findings = f.Map["findings"] is null ? null : [.. f.Each("findings").SelectMany(Meant)];
        if (verdict.Value == Passing && findings is [var first, ..])
            problems.Error(first.At, "a build that passes has no findings; leave `findings` out, or expect another verdict");
        return new Expectation(verdict, findings);
    }

    private IEnumerable<ExpectedFinding> Meant(Fields f)
    {
        if (f.Text("rule") is not { } rule)
            yield break;
        var places = f.Text("at") is { } one ? [one] : f.Texts("at");
        if (places.Count == 0)
            yield return new ExpectedFinding(rule.Value, null, rule.At);
        foreach (var place in places)
        {
            CheckPlace(place);
            yield return new ExpectedFinding(rule.Value, place.Value, place.At);
        }
    }

    private void CheckPlace(Located<string> place)
    {
        var names = _names ??= [.. vehicle.Positions.Select(p => p.Id), .. devices.Select(d => d.Id), .. channels.Select(c => c.Id),
            Supply.MainCable, Whole];
        if (!names.Contains(place.Value, StringComparer.Ordinal) && catalog.KindOf(place.Value) is null)
            problems.Warn(place.At,
                $"nothing is found at `{place.Value}`: it is no position of {vehicle.Id}, no device, output or part, and not `{Whole}`"
                    + Nearest.Hint(place.Value, names), ProblemKind.UnknownName);
    }
}
