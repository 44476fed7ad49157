using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Evaluation;
using FitCheck.Measuring;
using FitCheck.Physics.Quantities;
using FitCheck.Reports.Format;
using FitCheck.Reports.Html;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Measuring;

/// <summary>The open readings of a build as a card to print, to be filled in by pen in the car.</summary>
internal static class MeasureCard
{
    public static void Write(BuildResult build, ReportOptions options, TextWriter output)
    {
        var open = OpenReadings.Of(build);
        var inEntries = OpenReadings.InEntries(build);
        var (placed, elsewhere) = (open.Where(IsPlaced).ToList(), open.Where(r => !IsPlaced(r)).ToList());
        var tables = placed.GroupBy(r => Alike.SideLess(r.Place), StringComparer.Ordinal).Select(g => Table([.. g])).ToList();
        if (elsewhere.Count > 0)
            tables.Add(new CardTable("Elsewhere and on the bench", [""], [.. elsewhere.Select(r => Row([r], [r]))]));
        Write(new CardView("Measuring card", $"{build.Name}: {VehicleWords.Of(build)}",
            open.Count + inEntries.Count == 0
                ? MeasureWords.Nothing : "Each figure decides a check that is open. Read it, and write it into its field.",
            new(""), [], tables, [.. inEntries.Select(i => new CardNote(MeasureWords.Sentence(i.What), i.How))],
            $"fitcheck measure {FileNames.Word(Figures.ShortFile(build.File))} "
                + $"asks for these in the same order and writes them into the build."),
            open.Select(r => CardFigures.LetterOf(r.Key.Kind, r.Key.Of)), options, output);
    }

    /// <summary>Writes a card with the drawings that its letters need.</summary>
    public static void Write(CardView card, IEnumerable<string?> letters, ReportOptions options, TextWriter output)
    {
        var templates = new HtmlTemplates(Path.Combine(options.TemplatesDirectory, "measure"));
        var shown = letters.OfType<string>().ToHashSet(StringComparer.Ordinal);
        output.Write(templates.Render("card", card with { Style = templates.Style(), Figures = CardFigures.With(shown) }).ToString());
    }

    /// <summary>A field for what answers this datum.</summary>
    public static CardCell Field(AnswerShape? shape, string? passes = null) => new(IsField: true,
        shape switch
        {
            { IsLength: true } when Lengths.Told == LengthUnits.Inch => "in",
            { IsNumber: true, Unit: { } unit } => unit.Replace(ReadingLine.Blank, "__", StringComparison.Ordinal),
            _ => null,
        },
        shape?.Words is { Count: > 0 } words ? string.Join(" · ", words.Select(w => w switch { "true" => "yes", "false" => "no", _ => w }))
            : null, passes, Known: null)
    { IsChoice = shape is { IsNumber: false, Words.Count: > 0 } };

    private static bool IsPlaced(OpenReading reading) => reading.Key.Kind is DatumKey.Position or DatumKey.Line;

    private static CardTable Table(IReadOnlyList<OpenReading> readings)
    {
        var places = readings.Select(r => r.Place).Distinct(StringComparer.Ordinal).ToList();
        return new CardTable(Names.Joined(places), places.Count == 1 ? [""] : places,
            [.. readings.GroupBy(r => r.Key.Of, StringComparer.Ordinal)
                .Select(g => Row([.. g], [.. places.Select(p => g.FirstOrDefault(r => r.Place == p))]))]);
    }

    private static CardRow Row(IReadOnlyList<OpenReading> readings, IReadOnlyList<OpenReading?> cells)
    {
        var passes = readings.Select(Passes).Distinct(StringComparer.Ordinal).ToList();
        var decides = string.Join(", ", readings.SelectMany(r => r.Decides).Select(d => d.Finding.Rule).Distinct(StringComparer.Ordinal));
        var first = readings[0];
        return new CardRow(CardFigures.LetterOf(first.Key.Kind, first.Key.Of), MeasureWords.Here(first),
            $"{first.How} Decides {decides}{(passes is [{ } alike] ? $": {alike}" : "")}.",
            [.. cells.Select(c => c is null ? new CardCell(IsField: false, null, null, null, "known")
                : Field(c.Answer, passes.Count > 1 ? Passes(c) : null))]);
    }

    private static string? Passes(OpenReading reading) =>
        reading.Decides.Select(d => d.Passing).OfType<string>().Distinct(StringComparer.Ordinal).ToList() is { Count: > 0 } told
            ? $"passes with {string.Join(" and with ", told)}" : null;
}
