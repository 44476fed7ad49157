using FitCheck.Catalog;
using FitCheck.Charts;
using FitCheck.Evaluation;
using FitCheck.Foundation.Problems;
using FitCheck.Suggestions.Choices;
using FitCheck.Suggestions.Trials;
using FitCheck.Yaml;

namespace FitCheck;

/// <summary>Which choices of a build are told.</summary>
public sealed record ChoiceOptions : RunOptions
{
    /// <summary>Ids of parts, positions, devices or outputs of which nothing is offered, besides those that the build keeps.</summary>
    public IReadOnlyList<string> Keep { get; init; } = [];

    /// <summary>Only parts that need not be ordered.</summary>
    public bool CurrentOnly { get; init; }

    /// <summary>Only slots of these names, `spacer`; null for all. What nobody asks for need not be worked out.</summary>
    internal IReadOnlyList<string>? Only { get; init; }

    /// <summary>Only slots of such places; null for all.</summary>
    internal Func<IReadOnlyList<string>, bool>? At { get; init; }
}

/// <summary>A build that may be only begun, and what was found of it; or the reasons why it can't be judged.</summary>
internal sealed record DraftOutcome(Builds.Build? Build, BuildResult? Result, IReadOnlyList<Problem> Problems);

/// <summary>What a page needs that puts a build together.</summary>
public sealed partial class Checker
{
    /// <summary>
    /// Tells what may be chosen, or chosen otherwise. The build may be only begun: as long as it names its vehicle, `kind`, `name` and
    /// `fit` may be missing, and come with the first choice.
    /// </summary>
    /// <param name="build">The build.</param>
    /// <param name="options">What is left out; null for nothing.</param>
    /// <param name="cancel">Looked at before each slot.</param>
    /// <returns>The choices, none of them judged yet (<see cref="Preview"/> does that), or what is wrong with the build.</returns>
    /// <exception cref="ArgumentException"><paramref name="build"/> is null, or what is to be kept is null or holds a word that is null or
    /// empty.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public ChoicesOutcome Choices(BuildSource build, ChoiceOptions? options = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(build);
        options ??= new ChoiceOptions();
        Arguments.Words(options.Keep, nameof(options.Keep), mayBeEmpty: true);
        cancel.ThrowIfCancellationRequested();
        var (valid, problems) = (_valid, new ProblemList());
        if (BuildFiles.ReadDraft(build, _folders.Catalog, valid.Catalog, _schemas, problems, _today) is not { } read)
            return new ChoicesOutcome(null, problems.Sorted());
        var evaluator = new ProposalEvaluator(build.Name, read.Text, valid.Catalog, valid.Rules, _today);
        var editor = new YamlEditor(read.Text);
        IReadOnlyList<TextEdit> heads = [.. Builds.Draft.Heads(evaluator.Root, editor, evaluator.Build.Vehicle)];
        var slots = new List<ChoiceSlot>();
        foreach (var slot in Slots.WithOpen(evaluator, valid.Catalog, options.CurrentOnly,
            [.. options.Keep, .. evaluator.Build.Keep.Select(k => k.Value)], editor))
        {
            if (options.Only?.Contains(slot.What) == false || options.At?.Invoke(slot.Where) == false)
                continue;
            cancel.ThrowIfCancellationRequested();
            options.Progress?.Report($"looking for {slot.What}");
            slots.Add(new ChoiceSlot(slot.What, slot.Where, [.. slot.Where.Select(evaluator.NameOf)],
                slot.Now, slot.Now is null ? null : (valid.Catalog.Find(slot.Now) as Part)?.Name)
            {
                // One whose edits get into each other's way is none.
                Choices = [.. slot.Options.Select((o, i) => (Option: o, Change: new Suggestions.Choices.Change(slot, i)))
                    .Where(x => ProposalEvaluator.CanMake([x.Change], heads))
                    .Select(x =>
                    new BuildChoice(slot.Key, x.Option, build.Name, read.Text, () => QuoteText.Renewed(evaluator, [x.Change], heads)))],
            });
        }
        return new ChoicesOutcome(new BuildChoices(build.Name, read.Text, slots), problems.Sorted());
    }

    /// <summary>
    /// Tells what a check would say if the choice were made, by the catalogs and rules that are open now. Nothing is changed.
    /// </summary>
    /// <param name="choice">One of <see cref="Choices"/>.</param>
    /// <param name="cancel">Looked at before each of the two builds is judged.</param>
    /// <returns>The verdict and what appears and vanishes; or why the choice can't be made.</returns>
    /// <exception cref="ArgumentException"><paramref name="choice"/> is null.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public PreviewOutcome Preview(BuildChoice choice, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(choice);
        return Previews([choice], cancel: cancel)[0];
    }

    /// <summary>
    /// Tells of each of several choices what a check would say if it alone were made, on all processors; builds that they have in common
    /// are judged once. Nothing is changed.
    /// </summary>
    /// <param name="choices">Of one build or of several; the answers keep their order.</param>
    /// <param name="progress">Told in words what goes on; null for nobody. It may be called on any thread.</param>
    /// <param name="cancel">Looked at before each choice.</param>
    /// <exception cref="ArgumentException"><paramref name="choices"/> is null or holds a null.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public IReadOnlyList<PreviewOutcome> Previews(IReadOnlyList<BuildChoice> choices, IProgress<string>? progress = null,
        CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(choices);
        if (choices.Any(c => c is null))
            throw new ArgumentException("a choice of the list is null", nameof(choices));
        cancel.ThrowIfCancellationRequested();
        var valid = _valid;
        var before = choices.Select(c => (c.Name, c.Before)).Distinct().ToDictionary(b => b, b => Draft(b.Name, b.Before, valid));
        var outcomes = new PreviewOutcome[choices.Count];
        var done = 0;
        Parallel.For(0, outcomes.Length, new ParallelOptions { CancellationToken = cancel }, i =>
        {
            var (was, now) = (before[(choices[i].Name, choices[i].Before)], Draft(choices[i].Name, choices[i].Text, valid));
            outcomes[i] =
                was.Result is { } old && now.Result is { } judged
                    ? new PreviewOutcome(ChoicePreview.Of(choices[i], old, judged), now.Problems)
                : new PreviewOutcome(null, now.Result is null ? now.Problems : was.Problems);
            progress?.Report($"{Interlocked.Increment(ref done)} of {outcomes.Length} choices judged");
        });
        return outcomes;
    }

    /// <summary>What a check would say of a build that may be only begun; it is held to nothing but what is there.</summary>
    internal DraftOutcome Draft(string name, string text) => Draft(name, text, _valid);

    /// <summary>The same without what a check would say: the build alone, or what is wrong with it.</summary>
    internal DraftOutcome Begun(string name, string text) => Draft(name, text, _valid, isJudged: false);

    /// <summary>What carries each of some drivers best at positions of a vehicle, as the chart tells it.</summary>
    internal IReadOnlyDictionary<(string Position, string Driver), Part> BestMounts(Vehicle vehicle, IReadOnlyList<string> positions,
        IReadOnlyList<Driver> drivers, IReadOnlyCollection<string> accepts, CancellationToken cancel)
    {
        var valid = _valid;
        var places = vehicle.Positions.Where(p => positions.Contains(p.Id)).Select(p => (vehicle, p));
        return PairChart.BestMounts(valid.Catalog, valid.Rules, [.. places], drivers, accepts, cancel);
    }

    private DraftOutcome Draft(string name, string text, ValidInputs valid, bool isJudged = true)
    {
        var problems = new ProblemList();
        var read = BuildFiles.ReadDraft(BuildSource.Text(name, text), _folders.Catalog, valid.Catalog, _schemas, problems, _today);
        if (read is not null)
            Waivers.Refuse(read.Build, () => valid.Rules, problems);
        return read is null || problems.HasErrors ? new(null, null, problems.Sorted())
            : new(read.Build, isJudged ? BuildEvaluation.Judged(read.Build, valid.Rules) : null, problems.Sorted());
    }
}
