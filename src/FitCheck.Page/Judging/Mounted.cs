using FitCheck.Charts;
using FitCheck.Evaluation;
using FitCheck.Findings;

namespace FitCheck.Page.Judging;

/// <summary>
/// A driver that does not fit as it is may fit on a spacer or in a cup: then the two are offered together, judged as the build would be
/// with both.
/// </summary>
internal sealed class Mounted(Checker checker, IReadOnlySet<string> work)
{
    // The two sides of a car, and tweeters beside woofers.
    private const int MostPlaces = 8;

    /// <summary>The offer with the mounts that suit it best; null where none makes it better.</summary>
    public Offer? Of(BuildChoice choice, ChoiceSlot slot, Offer alone, BuildResult before, CancellationToken cancel)
    {
        var (text, name) = (choice.Text, choice.Name);
        List<ChosenPart> mounts = [];
        if (checker.Draft(name, text).Build is not { } build)
            return null;
        var fitted = build.Placed.Where(p => p.Driver is not null && slot.Where.Contains(p.Position.Id)).ToList();
        if (fitted.Count is 0 or > MostPlaces)
            return null;
        var rows = checker.Chart(new ChartOptions
        {
            Slice = new ChartSlice
            {
                Vehicles = [build.Vehicle.Id],
                Drivers = [.. fitted.Select(p => p.Driver!.Part.Id).Distinct(StringComparer.Ordinal)],
                Accepts = [.. build.Accepts.Where(ChartSlice.Work.Contains).Order(StringComparer.Ordinal)],
            },
        }, cancel).Result?.Rows ?? [];
        foreach (var place in fitted)
        {
            var row = rows.FirstOrDefault(r => r.Position.Id == place.Position.Id && r.Driver.Id == place.Driver!.Part.Id);
            if (row?.Mount is not { } mount || row.Status == Status.Fail || mounts.Exists(m => m.Id == mount.Id && Stands(text, name, place.Position.Id, mount.Id)))
                continue;
            if (Chosen(text, name, place.Position.Id, mount.Id, cancel) is not { } chosen)
                continue;
            text = chosen.Text;
            mounts.AddRange(chosen.Parts.Where(p => !mounts.Exists(m => m.Id == p.Id)));
        }
        if (mounts.Count == 0 || checker.Draft(name, text).Result is not { } after)
            return null;
        var offer = Offer.Of(choice, slot, before, after, work, mounts);
        return offer.Here < alone.Here || offer.Appear < alone.Appear ? offer with { Text = text } : null;
    }

    private BuildChoice? Chosen(string text, string name, string position, string mount, CancellationToken cancel) =>
        checker.Choices(BuildSource.Text(name, text), cancel: cancel).Result?.Slots
            .Where(s => s.What is "spacer" or "cup" && s.Where.Contains(position))
            .SelectMany(s => s.Choices).FirstOrDefault(c => c.Value == mount);

    private bool Stands(string text, string name, string position, string mount) =>
        checker.Draft(name, text).Build?.Placed.FirstOrDefault(p => p.Position.Id == position) is { } placed
        && (placed.Adapter?.Part.Id == mount || placed.Cup?.Part.Id == mount);
}
