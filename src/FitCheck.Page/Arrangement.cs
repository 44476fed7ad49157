using FitCheck.Evaluation;
using FitCheck.Lists;
using FitCheck.Measuring;
using FitCheck.Page.Acting;
using FitCheck.Page.Judging;
using FitCheck.Page.State;
using FitCheck.Page.Views;
using FitCheck.Physics.Quantities;
using FitCheck.Reports.Html;
using FitCheck.Reports.Measuring;
using FitCheck.Reports.Wording;
using FitCheck.Suggestions;

namespace FitCheck.Page;

/// <summary>Puts together what the templates see, for the state after an action.</summary>
internal sealed class Arrangement(Desk desk, PageOptions options, Outcome outcome, string? trouble)
{
    private static readonly Dictionary<string, string> SideNames = new(StringComparer.Ordinal)
    {
        ["places"] = "The car",
        ["measure"] = "Measure first",
        ["ways"] = "Cheapest way out",
        ["buy"] = "What to buy",
        ["beside"] = "Another build",
        ["text"] = "The text",
    };

    private PageState _state = outcome.State;

    /// <summary>A script takes it: choices are judged by requests of their own.</summary>
    public bool IsPart { get; init; }

    /// <summary>How many choices are to be judged, at least.</summary>
    public int UpTo { get; init; }

    /// <summary>Which of several ways is best.</summary>
    public string? Wish { get; init; }

    /// <summary>The ways that were found; null where nobody asked.</summary>
    public Suggestion? Suggestion { get; init; }

    public WholeView Of(CancellationToken cancel)
    {
        if (_state.Text.Length == 0)
            return View(StripViews.Of(_state, null, null), [])
                with
            { Start = StartViews.Of(_state, desk.Checker.Catalog) };
        // Judged by itself first, for one text may not wait for another.
        var before = _state.Before is { Length: > 0 } text ? desk.Of(_state.Name, text, j => StripViews.IsEmpty(j) ? null : j.Result)
            : null;
        return desk.Of(_state.Name, _state.Text, judged => Of(judged, before, cancel));
    }

    /// <summary>What could stand at the slot at hand; null where the build has no such slot any more.</summary>
    public ChoosingView? Choosing(CancellationToken cancel) => desk.Of(_state.Name, _state.Text, judged => Choosing(judged, cancel));

    private WholeView Of(Judged judged, BuildResult? before, CancellationToken cancel)
    {
        var open = judged.Result is { } found ? OpenReadings.Of(found).Count : 0;
        if (judged.Result is not { } result)
        {
            return View(StripViews.Of(_state, judged, null), Sides(0)) with
            {
                Problems = [.. judged.Problems.Select(p => p.ToString())],
                Text = TextViews.Of(_state, ""),
            };
        }
        if (_state.Place.Length == 0)
            _state = _state with { Place = Worst(judged) };
        using var told = Lengths.Asked(result.Lengths);
        var view = View(StripViews.Of(_state, judged, before), Sides(open)) with
        {
            Quote = outcome.Quote is { } quote ? QuoteViews.Of(quote) : null,
            Cautions = result.Cautions,
        };
        return _state.Side switch
        {
            "measure" => view with { Measure = MeasureViews.Of(judged, outcome) },
            "ways" => view with
            {
                Ways = Suggestion is { } found2 ? WaysViews.Of(found2, _state.Text, Wish) : WaysViews.Asked(Wish, result),
            },
            "buy" => view with { Buy = BuyViews.Of(result, List(cancel)) },
            "beside" => view with { Beside = Beside() },
            "text" => view with { Text = TextViews.Of(_state, judged.Build!.Vehicle.Find(_state.Place)?.Name ?? "") },
            _ => view with
            {
                Places = new PlacesViews(judged, before, _state, desk.Checker.Rules).Of(Choosing(judged, cancel)),
            },
        };
    }

    // Nobody has looked at a place yet: at that where most is to be done, else at the first.
    private static string Worst(Judged judged) => judged.Build!.Vehicle.Positions
        .OrderByDescending(p => judged.Result!.Findings.Where(f => f.Waived is null && f.Position == p.Id)
            .Select(f => (int)f.Status).DefaultIfEmpty(-1).Max()).FirstOrDefault()?.Id ?? PageState.Elsewhere;

    private ChoosingView? Choosing(Judged judged, CancellationToken cancel)
    {
        if (_state.Slot.Length == 0 || judged.Slot(_state.Slot) is not { } slot)
            return null;
        var count = IsPart ? 0 : Math.Min(slot.Choices.Count, Math.Max(UpTo, options.ChoicesAtOnce));
        var offers = desk.Offers([.. slot.Choices.Take(count)], slot, cancel);
        var next = Math.Min(slot.Choices.Count, count + options.ChoicesAtOnce);
        return ChoosingViews.Of(slot, _state.Text, offers, count < slot.Choices.Count ? next : null);
    }

    private PartsList? List(CancellationToken cancel) =>
        desk.Checker.List([BuildSource.Text(_state.Name, _state.Text)], cancel: cancel).Result?.Builds[0];

    private BesideView Beside()
    {
        if (_state.Other.Length == 0)
            return new BesideView(IsHeld: false, null, null);
        var both = desk.Checker.Check([BuildSource.Text(_state.Name, _state.Text), BuildSource.Text("the other build", _state.Other)]);
        return both.Result is { } result && BuildComparison.Of(result) is { } comparison
            ? new BesideView(IsHeld: true, HtmlReport.Of(comparison), null)
            : new BesideView(IsHeld: true, null, both.Problems.Count > 0 ? both.Problems[0].ToString() : "The builds can't be compared.");
    }

    private WholeView View(StripView strip, IReadOnlyList<SideView> sides) => new()
    {
        Title = strip.Name is { } name ? $"{name}: FitCheck" : "FitCheck: put a build together",
        Form = new FormView(_state.Text, _state.Past.ToString(), _state.Future.ToString(), _state.Place, _state.Slot, _state.Side,
            _state.Other, _state.File.ToString()),
        Strip = strip,
        Trouble = trouble,
        Told = outcome.Told,
        Sides = sides,
        LastWord = Sentences.LastWord,
    };

    private List<SideView> Sides(int open) =>
        [.. PageState.Sides.Select(s => new SideView(s, SideNames[s], s == "measure" && open > 0 ? Figures.Whole(open) : null,
            s == _state.Side))];
}
