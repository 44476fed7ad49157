using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Yaml;
using Xunit;
using Xunit.Abstractions;

namespace FitCheck.Tests.Checking;

/// <summary>
/// What a page offers: what may be chosen in a build, also in one that has only its vehicle, and what each choice would bring.
/// </summary>
public sealed class ChoicesTests(ITestOutputHelper output)
{
    private const int MostSteps = 20;
    private static readonly Checker Checker = OpenCheckers.OfRepository;

    public static TheoryData<string> Vehicles =>
        [.. Directory.GetFiles(RepositoryRoot.Of("catalog", "vehicles"), "*.yaml").Select(f => Path.GetFileNameWithoutExtension(f))
            .Order(StringComparer.Ordinal)];

    public static TheoryData<string> SomeBuilds =>
        ["front-rear-two-amps", "tansy-wrong-harness", "tansy-quote", "sedge-bridged-sub", "pellet-parts-bin", "corvid-shelf-6x9",
            "gannet-tweeter-swap"];

    [Theory, MemberData(nameof(Vehicles))]
    public void A_bare_vehicle_is_offered_a_driver_for_every_position(string vehicle)
    {
        var choices = Of(BuildSource.Text("bare.yaml", $"vehicle: {vehicle}\n"));

        var positions = Catalog(vehicle).Positions;
        Assert.NotEmpty(positions);
        Assert.All(positions,
            p => Assert.Contains(choices.Slots, s => s.What == "driver" && s.Where.Contains(p.Id) && s.Choices.Count > 0));
        Assert.Contains(choices.Slots, s => s.What == "source unit" && s.Choices.Count > 0);
        Assert.Contains(choices.Slots, s => s.What == "amplifier" && s.Choices.Count > 0);
    }

    [Theory]
    [InlineData("vehicle: tansy-hatch")]
    [InlineData("vehicle: tansy-hatch\n\n\n# to be gone on with\n")]
    [InlineData("{vehicle: tansy-hatch}")]
    [InlineData("kind: build\r\nname: Mine\r\nvehicle: tansy-hatch\r\n")]
    [InlineData("kind: build\nname: Mine\nvehicle: tansy-hatch\nfit: []\n")]
    [InlineData("---\nvehicle: tansy-hatch\nbudget: 200.00 EUR\n...\n")]
    [InlineData("\ufeffvehicle: tansy-hatch\n")]
    public void However_a_build_is_begun_each_choice_makes_a_text_that_can_be_read(string text)
    {
        var choices = Of(BuildSource.Text("bare.yaml", text));

        var drivers = choices.Slots.Where(s => s.What is "driver" or "component set").SelectMany(s => s.Choices).ToList();
        Assert.NotEmpty(drivers);
        Assert.All(drivers, c => Assert.NotNull(Checker.Check([BuildSource.Text("begun.yaml", c.Text)]).Result));
        Assert.All(choices.Slots.SelectMany(s => s.Choices), c => Assert.Null(Broken(c.Text)));
        Assert.All(choices.Slots.SelectMany(s => s.Choices), c => Assert.Equal(c.Text, Edited(choices.Text, c.Edits)));
    }

    [Theory, MemberData(nameof(SomeBuilds))]
    public void Each_choice_of_a_build_makes_a_text_that_can_be_read(string name)
    {
        var choices = Of(BuildSource.File(OpenCheckers.Build(name)));
        var all = choices.Slots.SelectMany(s => s.Choices).ToList();

        Assert.NotEmpty(all);
        Assert.Equal(all.Count, all.Select(c => c.Id).Distinct().Count());
        foreach (var choice in all)
        {
            Assert.Null(Broken(choice.Text));
            Assert.NotEqual(choices.Text, choice.Text);
            Assert.Equal(choice.Text, Edited(choices.Text, choice.Edits));
            Assert.Same(choice, choices.Find(choice.Id));
        }
    }

    [Theory, MemberData(nameof(SomeBuilds))]
    public void A_preview_is_what_a_check_says_after_the_choice(string name)
    {
        var source = BuildSource.File(OpenCheckers.Build(name));
        var before = Checker.Judged(source);
        var all = Of(source).Slots.SelectMany(s => s.Choices).ToList();
        // Every seventh, so that each slot is met somewhere; the rest would take minutes.
        var some = all.Where((_, i) => i % 7 == 0).ToList();

        var previews = Checker.Previews(some);

        Assert.Contains(previews, p => p.Result is not null);
        foreach (var (choice, preview) in some.Zip(previews))
        {
            var check = Checker.Check([BuildSource.Text(source.Name, choice.Text)]);
            Assert.Equal(check.Problems, preview.Problems);
            Assert.Equal(check.Result is null, preview.Result is null);
            if (preview.Result is not { } told || check.Result!.Builds[0] is not { } after)
                continue;
            Assert.Same(choice, told.Choice);
            Assert.Equal(after.Verdict, told.Verdict);
            Assert.Equal(after.Totals, told.Totals);
            Assert.Equal(after.Findings.Select(Words), told.After.Findings.Select(Words));
            var (was, now) = (Open(before), Open(after));
            Assert.Equal(now.Except(was).Order(StringComparer.Ordinal), told.Appear.Select(Key).Order(StringComparer.Ordinal));
            Assert.Equal(was.Except(now).Order(StringComparer.Ordinal), told.Vanish.Select(Key).Order(StringComparer.Ordinal));
        }
    }

    [Fact]
    public void A_choice_names_its_part_and_price_and_keeps_its_id()
    {
        var source = BuildSource.Text("bare.yaml", "vehicle: tansy-hatch\n");
        var choice = Of(source).Find("driver@front-door-left+front-door-right=orrin-c165")!;

        // The figures of catalog/drivers/orrin-c165.yaml.
        Assert.Equal(new ChosenPart("orrin-c165", "driver", "Orrin C165 coaxial", new FitCheck.Catalog.Money(89.00m, "EUR"), 2, "current"),
            Assert.Single(choice.Parts));
        Assert.NotNull(Of(source).Find(choice.Id));
        Assert.Null(Of(BuildSource.Text("then.yaml", choice.Text)).Find(choice.Id));
        Assert.Equal(
            "kind: build\nname: \"Merrow Tansy hatchback\"\nvehicle: tansy-hatch\n\nfit:\n  - {at: [front-door-left, front-door-right], "
                + "driver: orrin-c165}\n", choice.Text);
    }

    [Fact]
    public void What_is_kept_is_not_offered()
    {
        var source = BuildSource.Text("bare.yaml", "vehicle: tansy-hatch\n");

        Assert.DoesNotContain(Checker.Choices(source, new ChoiceOptions { Keep = ["front-door-left"] }).Result!.Slots,
            s => s.Where.Contains("front-door-left"));
    }

    [Fact]
    public void A_build_without_its_vehicle_is_told_and_other_mistakes_are_too()
    {
        Assert.NotEmpty(Checker.Choices(BuildSource.Text("a.yaml", "name: Mine\n")).Problems);
        Assert.Contains("did you mean `tansy-hatch`?",
            Assert.Single(Checker.Choices(BuildSource.Text("a.yaml", "vehicle: tansy-hatcj\n")).Problems).Message,
            StringComparison.Ordinal);
        Assert.Contains("did you mean `budget`?",
            Assert.Single(Checker.Choices(BuildSource.Text("a.yaml", "vehicle: tansy-hatch\nbudgt: 200 EUR\n")).Problems).Message,
            StringComparison.Ordinal);
        Assert.Null(Checker.Choices(BuildSource.File("no/such.yaml")).Result);
    }

    [Fact]
    public void Arguments_that_nobody_can_have_meant_are_refused_by_name()
    {
        var source = BuildSource.Text("bare.yaml", "vehicle: tansy-hatch\n");

        Assert.Equal("build", Assert.ThrowsAny<ArgumentException>(() => Checker.Choices(null!)).ParamName);
        Assert.Equal("Keep",
            Assert.ThrowsAny<ArgumentException>(() => Checker.Choices(source, new ChoiceOptions { Keep = [""] })).ParamName);
        Assert.Equal("choice", Assert.ThrowsAny<ArgumentException>(() => Checker.Preview(null!)).ParamName);
        Assert.Equal("choices", Assert.ThrowsAny<ArgumentException>(() => Checker.Previews([null!])).ParamName);
        Assert.Equal("id", Assert.ThrowsAny<ArgumentException>(() => Of(source).Find("")).ParamName);
        using var cancelled = new CancellationTokenSource();
        cancelled.Cancel();
        Assert.Throws<OperationCanceledException>(() => Checker.Choices(source, cancel: cancelled.Token));
        Assert.Throws<OperationCanceledException>(() => Checker.Previews([Of(source).Slots[0].Choices[0]], cancel: cancelled.Token));
    }

    // A person who takes at each place the driver that the chart likes best, and then always the offer that leaves least to be wished for.
    [Theory]
    [InlineData("tansy-hatch")]
    [InlineData("pellet-city")]
    public void From_a_bare_vehicle_choices_lead_to_a_build_that_passes(string vehicle)
    {
        var text = $"vehicle: {vehicle}\n";
        var chart =
            Checker.Chart(
                new ChartOptions
                {
                    Slice = new FitCheck.Charts.ChartSlice
                    {
                        Vehicles = [vehicle],
                        Accepts = []
                    }
                }).Result!.Rows.ToDictionary(r => (r.Position.Id, r.Driver.Id), r => r.Status);
        var taken = new List<string>();
        while (taken.Count < MostSteps)
        {
            var slots = Of(BuildSource.Text("mine.yaml", text)).Slots;
            var open = slots.FirstOrDefault(s => s is { What: "driver", Now: null });
            if (open is null && Verdict(text) < Status.Fail)
                break;
            var offered = (open is not null ? open.Choices : slots.SelectMany(s => s.Choices)).ToList();
            var best = Checker.Previews(offered).Select(p => p.Result).OfType<ChoicePreview>()
                .OrderBy(p => open?.Where.Max(w => chart[(w, p.Choice.Value!)]))
                .ThenBy(p => Count(p, Status.Fail)).ThenBy(p => Count(p, Status.Measure)).ThenBy(p => Count(p, Status.Warn))
                .ThenBy(p => p.Totals.Sum(t => t.Amount)).First();
            taken.Add(best.Choice.Id);
            text = best.Choice.Text;
        }
        output.WriteLine(string.Join('\n', taken) + "\n\n" + text);

        Assert.InRange(taken.Count, 2, MostSteps - 1);
        Assert.True(Verdict(text) < Status.Fail, text);
    }

    [Fact]
    public void An_amplifier_takes_over_what_hung_on_the_radio()
    {
        var text = Of(BuildSource.Text("mine.yaml", "vehicle: tansy-hatch\n"))
            .Find("driver@front-door-left+front-door-right=orrin-c165")!.Text;

        text = Of(BuildSource.Text("mine.yaml", text)).Find("amplifier@amp=kestow-d4-60")!.Text;

        Assert.EndsWith("""

            devices:
              - {id: radio, part: factory}
              - {id: amp, part: kestow-d4-60, from: radio}

            channels:
              - {id: front-left, output: amp.1, feeds: [front-door-left]}
              - {id: front-right, output: amp.2, feeds: [front-door-right]}

            """.ReplaceLineEndings("\n"), text, StringComparison.Ordinal);
        Assert.NotNull(Checker.Check([BuildSource.Text("mine.yaml", text)]).Result);
        // What is chosen later is put on an output that is free.
        text = Of(BuildSource.Text("mine.yaml", text)).Find("driver@rear-door-left+rear-door-right=orrin-c165")!.Text;
        text = Of(BuildSource.Text("mine.yaml", text)).Find("output@rear-door-left+rear-door-right=amp.3 and amp.4")!.Text;
        Assert.NotNull(Checker.Check([BuildSource.Text("mine.yaml", text)]).Result);
    }

    private static int Count(ChoicePreview preview, Status status) =>
        preview.After.Findings.Count(f => f.Waived is null && f.Status == status);

    private static Status Verdict(string text) =>
        Checker.Check([BuildSource.Text("mine.yaml", text)]).Result is { } result ? result.Verdict : Status.Fail;

    private static BuildChoices Of(BuildSource source)
    {
        var outcome = Checker.Choices(source);
        Assert.Empty(outcome.Problems);
        return outcome.Result!;
    }

    private static FitCheck.Catalog.Vehicle Catalog(string id) =>
        (FitCheck.Catalog.Vehicle)FitCheck.Catalog.PartsCatalog.Open([RepositoryRoot.Of("catalog")], new ProblemList()).Find(id)!;

    private static string? Broken(string text)
    {
        var problems = new ProblemList();
        var root = YamlReader.Read(new SourceText("choice.yaml", text), problems);
        return root is YamlMap && problems.Count == 0 ? null : $"{string.Join('\n', problems.All)}\n{text}";
    }

    private static string Edited(string text, IReadOnlyList<TextEdit> edits)
    {
        foreach (var edit in edits.Reverse())
            text = text.Remove(edit.Start, edit.Length).Insert(edit.Start, edit.Text);
        return text;
    }

    private static IReadOnlyList<string> Open(BuildResult result) =>
        [.. result.Findings.Where(f => f.Waived is null && f.Status != Status.Pass).Select(Key).Distinct()];

    private static string Key(Finding f) => $"{f.Rule} {f.Position} {f.Status}";

    private static string Words(Finding f) => $"{f.At} {Key(f)} {f.Message} {f.Waived}";
}
