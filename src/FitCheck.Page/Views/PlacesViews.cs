using FitCheck.Builds;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Page.Judging;
using FitCheck.Page.State;
using FitCheck.Reports.Html;
using FitCheck.Reports.Markup;
using FitCheck.Reports.Svg;
using FitCheck.Reports.Svg.Plan;
using FitCheck.Reports.Wording;
using FitCheck.Rules;

namespace FitCheck.Page.Views;

/// <summary>The car with its places, and the place at hand with its drawing, its parts and what is found there.</summary>
internal sealed class PlacesViews(Judged judged, BuildResult? before, PageState state, RuleSet rules)
{
    private readonly Build _build = judged.Build!;
    private readonly BuildResult _result = judged.Result!;
    private readonly HashSet<string> _positions = judged.Build!.Vehicle.Positions.Select(p => p.Id).ToHashSet(StringComparer.Ordinal);

    // A finding is new where the build before the last action had none of this rule and status there.
    private readonly HashSet<Finding> _new = before is null ? []
        : ChoicePreview.Without(judged.Result!, before).ToHashSet(ReferenceEqualityComparer.Instance as IEqualityComparer<Finding>);

    public PlacesView Of(ChoosingView? choosing)
    {
        var moved = before is null ? []
            : ChoicePreview.Without(_result, before).Concat(ChoicePreview.Without(before, _result)).Select(f => f.Position)
                .ToHashSet(StringComparer.Ordinal);
        var places = _build.Vehicle.Positions.Select(p => PlanPlace.Of(p) with
        {
            Status = Fitted(p.Id) is null && Fitted(before, p.Id) is null && !HasOpen(p.Id) ? null : Worst([p.Id]),
            Fitted = Fitted(p.Id),
            Changed = moved.Contains(p.Id),
        }).ToList();
        List<PlaceRowView> rows = [.. places.Select(p => new PlaceRowView(p.Id, p.Name, p.Word,
            p.Status is { } s ? FindingViews.Status(s) : null, p.Fitted, p.Id == state.Place, p.Changed))];
        var devices = _build.Devices.Where(d => !d.IsFactory).Select(d => Names.Short(d.Part.Name)).ToList();
        var elsewhere = Elsewhere().ToList();
        rows.Add(new PlaceRowView(PageState.Elsewhere, "Radio, amplifiers and cables", elsewhere.Count == 0 ? "not judged"
            : StatusWords.Worst(elsewhere.Select(f => f.Status)).Word(),
            elsewhere.Count == 0 ? null : FindingViews.Status(StatusWords.Worst(elsewhere.Select(f => f.Status))),
            devices.Count == 0 ? "the factory radio" : string.Join(", ", devices.Distinct(StringComparer.Ordinal)),
            state.Place == PageState.Elsewhere, elsewhere.Exists(_new.Contains)));
        return new PlacesView(CarPlan.Draw("plan", _build.Vehicle, places, state.Place), rows, Here(), choosing);
    }

    private PlaceView? Here()
    {
        var position = _build.Vehicle.Find(state.Place);
        if (position is null && state.Place != PageState.Elsewhere)
            return null;
        var findings =
            (position is null ? Elsewhere() : _result.Findings.Where(f => f.Waived is null && f.Position == position.Id)).ToList();
        var told = Told.Of(findings.OrderByDescending(f => f.Status));
        var (open, passes) = (told.Where(t => t.First.Status != Status.Pass), told.Where(t => t.First.Status == Status.Pass));
        return new PlaceView
        {
            Id = state.Place,
            Name = position?.Name ?? "Radio, amplifiers and cables",
            Status = findings.Count == 0 ? null : FindingViews.Status(StatusWords.Worst(findings.Select(f => f.Status))),
            State = findings.Count > 0 ? ""
                : Fitted(state.Place) is null ? "Nothing is planned here yet." : "No rule has anything to say of it.",
            Drawings = position is null ? Wiring() : Section(position.Id),
            Slots = [.. Slots(position is null)],
            Open = [.. open.Select((t, i) => Judgement(t, $"open{Figures.Whole(i)}", position is null))],
            Passes = [.. passes.Select((t, i) => Judgement(t, $"pass{Figures.Whole(i)}", position is null))],
            PassesTitle = Sentences.Count(findings.Count(f => f.Status == Status.Pass), "check passes", "checks pass"),
        };
    }

    private IEnumerable<SlotView> Slots(bool isElsewhere) =>
        from slot in judged.At(isElsewhere ? null : state.Place)
        let key = SlotKey.Of(slot)
        let others = slot.WhereNames.Count > 1 || isElsewhere
        select new SlotView(key, $"slot-{Mark.Of(key)}", slot.What, others ? Names.Joined(slot.WhereNames) : null,
            slot.NowName ?? slot.Now ?? "nothing", slot.NowName is null ? null : slot.Now,
            slot.Now is null ? "Choose" : "Change", slot.Choices.Count, key == state.Slot);

    private JudgementView Judgement(Told told, string id, bool saysWhere)
    {
        var view = FindingViews.Of(told, id) with { Where = saysWhere ? told.Where : null };
        return rules.Find(told.First.Rule) is { } rule
            ? new(view, rule.Why, rule.Caution, rule.Source.Title ?? rule.Source.ToString(), rule.Source.Url,
            told.Findings.Any(_new.Contains))
            : new(view, "", null, told.First.Source, null, told.Findings.Any(_new.Contains));
    }

    private List<SafeHtml> Section(string position)
    {
        if (_result.Drawings.FirstOrDefault(d => d.Position == position) is not { } drawing)
            return [];
        var drawings = new List<SafeHtml> { SectionDrawing.Draw("section", drawing) };
        if (FacePlan.Draw("face", drawing) is { } face)
            drawings.Add(face);
        return drawings;
    }

    private List<SafeHtml> Wiring()
    {
        List<SafeHtml> drawings = [.. _result.Loads.Select((l, i) => LoadPlot.Draw($"load{Figures.Whole(i)}", l))];
        if (_result.Supply is { } supply)
            drawings.Insert(0, SupplyDrawing.Draw("supply", supply));
        return drawings;
    }

    private IEnumerable<Finding> Elsewhere() => _result.Findings.Where(f => f.Waived is null && !_positions.Contains(f.Position));

    private bool HasOpen(string position) =>
        _result.Findings.Any(f => f.Position == position && f.Waived is null && f.Status != Status.Pass);

    private Status? Worst(IReadOnlyList<string> keys) =>
        _result.Findings.Where(f => f.Waived is null && keys.Contains(f.Position)).Select(f => f.Status).ToList() is { Count: > 0 } all
            ? StatusWords.Worst(all) : null;

    private string? Fitted(string position) => _build.Placed.FirstOrDefault(p => p.Position.Id == position) is not { } placed ? null
        : placed.Driver is { } driver ? Names.Short(driver.Part.Name)
        : placed.Adapter is { } adapter ? Names.Short(adapter.Part.Name)
        : placed.Cup is { } cup ? Names.Short(cup.Part.Name)
        : placed.KeepsFactoryDriver ? "factory driver stays" : placed.Disconnected ? "unplugged" : null;

    private static string? Fitted(BuildResult? result, string position) =>
        result?.Findings.Any(f => f.Position == position) == true ? "" : null;
}
