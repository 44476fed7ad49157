using System.Text.RegularExpressions;
using FitCheck.Evaluation;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Reports.Wording;
using FitCheck.Tests.Reports;
using FitCheck.Tests.Snapshots;
using Xunit;

namespace FitCheck.Tests.Sheet;

public sealed class SheetTests
{
    private static readonly string Sheet = SampleSheet.Written(SampleSheet.Build);

    [Fact]
    public void The_sample_is_laid_out_as_before() => Snapshot.Match(Sheet, "sample-sheet", "html");

    [Fact]
    public void What_fails_stands_first_and_stops_the_work()
    {
        var stop = Sheet.IndexOf("This build does not go together as planned; do not start.", StringComparison.Ordinal);

        Assert.InRange(stop, 1, Sheet.IndexOf("Take care", StringComparison.Ordinal));
        Assert.All(SampleSheet.Build.Findings.Where(f => f.Status == Status.Fail && f.Waived is null),
            f => Assert.Contains(f.Message, Sheet, StringComparison.Ordinal));
    }

    [Fact]
    public void Without_a_failure_nothing_stops_it() =>
        Assert.DoesNotContain("do not start", SampleSheet.Written(SampleSheet.Build with { Findings = [] }), StringComparison.Ordinal);

    [Fact]
    public void What_is_to_be_measured_has_a_line_and_the_reading_that_passes() =>
        // the sample's own words
        Assert.Contains("<b class=\"blank\">________ mm; passes with 66.2 mm or more</b>", Sheet, StringComparison.Ordinal);

    [Fact]
    public void An_unknown_figure_is_a_line_to_write_on()
    {
        // the sample has no boss
        Assert.Contains("no longer than 17 mm under the head; ________ mm uses the whole boss", Sheet, StringComparison.Ordinal);
        Assert.Contains("<td>output rear</td><td>________ V</td>", Sheet, StringComparison.Ordinal); // nor a gain for this output
    }

    [Fact]
    public void What_was_agreed_on_is_told_to_whoever_mounts_it() =>
        Assert.All(SampleSheet.Build.Findings.Where(f => f.Waived is not null),
            f => Assert.Contains($"Agreed when it was planned: {f.Waived}", Sheet, StringComparison.Ordinal));

    // Common practice, no source: an amplifier's output and the radio's on one pair destroy one of them.
    [Theory]
    [InlineData("", true)]
    [InlineData(", new_wire: {cable: speaker-cable-16awg-10m, length: 5 m}", false)]
    public void A_factory_wire_that_an_amplifier_takes_over_comes_off_the_radio_first(string wire, bool isTold)
    {
        var sheet = SampleSheet.Written(Trial.Of($$"""
            kind: build
            name: trial
            vehicle: tansy-hatch
            fit:
              - {at: [front-door-left], driver: orrin-c165, adapter: spacer-165-tansy-18{{wire}}}
              - {at: [front-tweeter-left], disconnected: true}
            devices: [{id: radio, part: factory}, {id: amp, part: kestow-d4-60, from: radio}]
            channels: [{id: left, output: amp.1, feeds: [front-door-left]}]
            """));

        Assert.Equal(isTold, sheet.Contains("Take the wires of front-left off the radio", StringComparison.Ordinal));
    }

    [Fact]
    public void Several_builds_follow_each_other_under_ids_of_their_own()
    {
        var html = SampleSheet.Written(SampleSheet.Build, SampleSheet.Build);
        var ids = Regex.Matches(html, " id=\"([^\"]+)\"").Select(m => m.Groups[1].Value).ToList();

        Assert.Equal(ids.Count, ids.Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(2, Regex.Count(html, "<article "));
        Assert.DoesNotContain(Regex.Matches(html, "aria-labelledby=\"([^\"]+)\"").Select(m => m.Groups[1].Value), id => !ids.Contains(id));
    }

    [Theory]
    [MemberData(nameof(HostileTexts.All), MemberType = typeof(HostileTexts))]
    public void A_hostile_name_reaches_no_browser(string text)
    {
        var build = EscapingTests.Everywhere(text).Builds[0] with
        {
            Facts = [.. SampleSheet.Build.Facts.Select(t => t with
            {
                Name = text,
                Values = t.Values.ToDictionary(v => v.Key, v => v.Value.Word is null ? v.Value : FactValue.Of(text),
                    StringComparer.Ordinal),
            })],
            Drawings = [SampleSheet.Build.Drawings[0] with { Name = text }],
            Wirings = [SampleSheet.Build.Wirings[0] with { Output = text, Crossover = text,
                Ends = [new(text, text, text, IsTweeter: true, IsFactory: false)] }],
            Supply = SampleSheet.Build.Supply! with { Distribution = text },
            Settings = [new([text], text, text)],
        };
        var html = SampleSheet.Written(build);

        Assert.DoesNotMatch("<(script|img|b>$|/details)", html);
        Assert.DoesNotContain('\u0007', html);
        Assert.DoesNotContain('\u001b', html);
        Assert.DoesNotContain("&amp;lt;", html, StringComparison.Ordinal);
        Assert.Equal(html.IndexOf("</style>", StringComparison.Ordinal), html.LastIndexOf("</style>", StringComparison.Ordinal));
    }

    // Every quantity in a step or a table is a fact, a setting, a wire or what a finding says; the sheet computes and invents none.
    [Theory]
    [InlineData("front-rear-two-amps")]
    [InlineData("tansy-angled-rings")]
    [InlineData("ostler-hole-enlarged")]
    [InlineData("alder-missing-data")]
    [InlineData("sedge-bridged-sub")]
    public void Every_number_is_told_by_the_report_too(string name)
    {
        var build = Trial.Of(File.ReadAllText(RepositoryRoot.Of("catalog", "builds", name + ".yaml")));
        var html = SampleSheet.Written(build);
        var work = Regex.Replace(
            html[html.IndexOf("<section class=\"", html.IndexOf("class=\"cautions\"", StringComparison.Ordinal) + 20,
                StringComparison.Ordinal)..], "<svg.*?</svg>|<[^>]+>", " ", RegexOptions.Singleline);
        var known = string.Join('\n', (string[])[
            .. build.Facts.SelectMany(t => t.Values.Values).Select(v => v.Text),
            .. build.Findings.SelectMany(
                f => (string[])[f.Message, f.Advice, f.Title, f.Waived ?? "",
                    .. f.ToMeasure.SelectMany(m => (string[])[m.What, m.How, m.Passing ?? ""])]),
            .. build.Settings.Select(s => s.Value), .. build.List.Select(l => l.Name),
            .. build.Wirings.SelectMany(w => w.Ends).Select(e => e.Path),
            .. (build.Supply?.Legs.Append(build.Supply.Main!).Where(l => l is not null) ?? []).SelectMany(
                l => (string[])[$"{l.Gauge} {l.GroundGauge}", Figures.Show(l.LengthM ?? 0, "m"), Figures.Show(l.GroundLengthM ?? 0, "m"),
                    Figures.Show(l.FuseA ?? 0, "A"), Figures.Show(l.FuseDistanceMm ?? 0, "mm")]),
            .. build.Drawings.Select(d => d.Face).OfType<Drawings.FaceDrawing>()
                .SelectMany(
                f => f.Panel.Concat(f.Driver).Select(h => Figures.Show(2 * h.Radius, "mm"))
                    .Append(Figures.Show(2 * (f.SpacerRadius ?? 0), "mm")).Append(Figures.Show(2 * (f.CutoutRadius ?? 0), "mm"))
                    .Append(Figures.Show(f.PanelScrew ?? 0, "mm")))]);

        var told = Regex.Matches(System.Net.WebUtility.HtmlDecode(work), @"(?<![\w.])\d+(\.\d+)? (mm|deg|V|Hz|A|m|AWG|dB/octave|ohm|ms)\b")
            .Select(m => m.Value).Distinct().Where(q => q is not ("100 mm" or "1.5 V")).ToList();

        Assert.NotEmpty(told);
        Assert.Equal([], told.Where(q => !Regex.IsMatch(known, $@"(?<![\w.]){Regex.Escape(q)}\b")));
    }

    [Fact]
    public void The_richest_build_is_told_as_worked_out_by_hand()
    {
        var text = Regex.Replace(
            SampleSheet.Written(Trial.Of(File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "front-rear-two-amps.yaml")))), "<[^>]+>",
            " ");

        // aim 10:30 of the vehicle, opposite on the clock
        Assert.Contains("Thick side towards half past four", text, StringComparison.Ordinal);
        Assert.Contains("Screws: 17 mm long under the head", text, StringComparison.Ordinal); // flange 5 mm and boss 12 mm of the catalog
        Assert.Matches(@"output front-left, front-right\s+16\.73 V", text); // √(70 W · 4 ohm), the woofer's rating
        Assert.Matches(@"100 A, 300 mm from the battery", text); // the build's own figures
        Assert.Matches(@"The hole in the panel is 158 mm wide", text); // the vehicle's own figure
    }
}
