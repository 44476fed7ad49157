using FitCheck.Evaluation;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;
using FitCheck.Reports.Html;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Sheet;

/// <summary>Arranges one build in the order in which it is worked through.</summary>
internal sealed class WorkOrder
{
    private readonly BuildResult _build;
    private readonly string _id;
    // Both sides of the vehicle stand together.
    private readonly List<List<SheetFacts>> _places;
    private readonly List<SectionView> _sections = [];

    private WorkOrder(BuildResult build, string id)
    {
        (_build, _id) = (build, id);
        var places = SheetFacts.Of(build, Subject.Position);
        _places = [.. places.GroupBy(p => Alike.SideLess(p.Name), StringComparer.Ordinal).Select(g => g.ToList())];
    }

    public static BuildSheet Of(BuildResult build, string id, string madeBy)
    {
        using var told = Lengths.Asked(build.Lengths);
        return new WorkOrder(build, id).Arrange(madeBy);
    }

    private BuildSheet Arrange(string madeBy)
    {
        var patterns = HolePatterns.Of(_build);
        Add("Measure first", "Buy and cut nothing before these lines are filled in and pass.", "measure", SheetSteps.Measures(_build));
        Add("Lay out the parts", null, "parts",
            [.. _build.List.Select(l => new StepView(null, l.IsOwned ? $"{l.Name} (owned)" : $"{Figures.Whole(l.Packs)} × {l.Name}")),
                .. SheetSteps.Asked(_build, "list")]);
        Add("Test first", null, "steps",
        [
            new(null, "Switch the factory system on. Note what does not play: " + SheetFacts.Blank + SheetFacts.Blank),
            new(null, "Play every new driver quietly on the bench, tweeters only behind their crossover or capacitor, before a wire is "
                + "cut."),
        ]);
        Add("Disconnect", null, "steps",
        [
            new(null, "Take the key out. Take off the negative terminal of the battery. Wait as long as the vehicle maker says before "
                + "you touch anything near an airbag."),
        ]);
        Add("Remove", null, "steps", AtPlaces(PlaceSteps.Remove));
        Add("Cut and drill",
            "Cover everything behind the cut. Look behind the panel before you drill. Holes seen from inside, on a clock face.", "steps",
            [.. AtPlaces(f => PlaceSteps.Cut(f, _build, patterns.Reference(f.Key))), .. patterns.TooLarge,
                .. SheetSteps.Asked(_build, "mount", "tweeter")]);
        Add("Mount", null, "steps",
            [.. AtPlaces(PlaceSteps.Mount), .. SheetSteps.Asked(_build, "seal", "aim", "box"), .. SheetSteps.Agreed(_build)]);
        Add("Wire", null, "steps", [.. WiringSteps.TakenOver(_build), .. WiringSteps.Signal(_build),
            .. SheetSteps.Asked(_build, "wiring", "signal", "sides")],
            WiringSteps.Polarity(_build));
        Power();
        Settings();
        Add("Before the panels go back", null, "steps",
        [
            .. AtPlaces(PlaceSteps.Close),
            new(null, "Every driver plays, alone and clean. Left and right together have more bass than either alone: else one is "
                + "swapped."),
            new(null, "Every screw is tight, every plug is locked and wrapped, no wire touches glass, a sharp edge, a seat belt or an "
                + "airbag."),
            .. SheetSteps.AskedElse(_build, "list", "mount", "tweeter", "seal", "aim", "box", "wiring", "signal", "sides", "supply",
                "level", "band", "power", "load"),
        ]);
        return new BuildSheet
        {
            Id = _id,
            Name = _build.Name,
            Vehicle = VehicleWords.Of(_build),
            MadeBy = madeBy,
            Waived = Headline.Strength(_build) is null ? null : Headline.Of(_build),
            Stops = SheetSteps.Stops(_build),
            Cautions = _build.Cautions,
            LastWord = Sentences.LastWord,
            Sections = _sections,
            Templates = patterns.Templates(_id),
        };
    }

    private void Power()
    {
        var supply = WiringSteps.Supply(_build);
        List<StepView> steps = [.. SheetSteps.Asked(_build, "supply"),
            new(null, "Plug in again whatever belongs to an airbag, before the ignition is switched on."),
            new(null, supply is null ? "Connect the battery, the negative terminal last."
                : "Ground first, then plus, then the battery's negative terminal. Put the fuses in last.")];
        Add("Power", null, "steps", steps, supply);
    }

    private void Settings()
    {
        List<StepView> steps = [.. SheetSteps.Asked(_build, "level", "band", "power", "load")];
        if (SettingRows.HaveGain(_build))
            steps.Insert(0, new StepView("Gain", Sentences.HowToSetTheGain));
        Add("Set", null, "steps", steps, SettingRows.Of(_build));
    }

    // A stage at both sides of the vehicle, then the next one.
    private IReadOnlyList<StepView> AtPlaces(Func<SheetFacts, IEnumerable<string?>> told) => SheetSteps.Merged(
        from alike in _places
        from step in alike.SelectMany(f => told(f).Select((text, stage) => (f.Name, Text: text, Stage: stage))).OrderBy(s => s.Stage)
        select (step.Name, step.Text));

    private void Add(string title, string? lead, string css, IReadOnlyList<StepView> steps, TableView? table = null)
    {
        if (steps.Count == 0 && table is null)
            return;
        var number = Figures.Whole(_sections.Count + 1);
        _sections.Add(new SectionView($"{_id}-s{number}", number, title, steps.Count == 0 ? null : lead, css, steps, table));
    }
}
