using System.Globalization;
using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Foundation.Problems;
using FitCheck.Page.State;
using FitCheck.QuoteImport;

namespace FitCheck.Page.Acting;

/// <summary>A seller's list becomes the build, as on the command line; what nobody can be sure of is asked on the page.</summary>
internal sealed class QuoteAction(Checker checker)
{
    /// <summary>The answer that a line is none of the catalog, and that a part goes nowhere yet.</summary>
    public const string Nothing = "-";

    private const string Line = "line.", Goes = "goes.";

    /// <summary>The field that answers which part a line is.</summary>
    public static string LineField(string line) => $"{Line}{line}";

    /// <summary>The field that answers where a part goes.</summary>
    public static string PlaceField(string part) => $"{Goes}{part}";

    public Outcome Of(PageState state, IForm form, CancellationToken cancel)
    {
        if (Vehicle(state) is not { } vehicle)
            return new(state, "Say first which car it is for: a list is read for one vehicle.");
        if (List(form) is not { } quote)
            return new(state, "Choose the seller's list first: a CSV or XLSX file with an id or a name and a number in each line.");
        quote = Answered(quote, form);
        var options = new ImportOptions { As = quote.As, At = quote.At, Skip = quote.Skip };
        var outcome = checker.Import(BuildSource.Bytes(quote.Name, quote.Bytes), vehicle, options, cancel);
        IReadOnlyList<OpenPlace> places = [.. outcome.OpenPlaces.Where(p => !quote.At.Any(a => a.StartsWith($"{p.Item.Part.Id}=",
            StringComparison.Ordinal)) && form.Field(PlaceField(p.Item.Part.Id)) != Nothing)];
        if (outcome.Open.Count > 0 || places.Count > 0)
            return new(state) { Quote = quote with { Lines = outcome.Open, Places = places } };
        return outcome.Build is { } text
            ? new(state.Changed(PageState.Lines(text)), [.. outcome.Problems.Select(p => p.Message)])
            : new(state, [.. outcome.Problems.Select(p => p.ToString())]);
    }

    // The vehicle of the build, also of one that can't be judged.
    private string? Vehicle(PageState state) =>
        Yaml.YamlReader.Read(new Foundation.Files.SourceText(state.Name, state.Text), new ProblemList()) is Yaml.YamlMap root
        && root["vehicle"] is Yaml.YamlScalar named && checker.Catalog.Find(named.Text) is Vehicle vehicle ? vehicle.Id : null;

    private static QuoteState? List(IForm form)
    {
        if (form.File("quote") is var (name, bytes) && bytes.Length > 0)
            return new(name, bytes, [], [], []);
        if (form.Field("quote-bytes") is not { Length: > 0 } held)
            return null;
        var known = new byte[held.Length];
        return Convert.TryFromBase64String(held, known, out var count)
            ? new(form.Field("quote-name") is { Length: > 0 } file ? file : "list", known[..count], [], [], []) : null;
    }

    private static QuoteState Answered(QuoteState quote, IForm form)
    {
        List<string> parts = [], places = [];
        List<int> skip = [];
        foreach (var (field, value) in form.Fields(Line))
        {
            if (!int.TryParse(field[Line.Length..], NumberStyles.None, CultureInfo.InvariantCulture, out var line) || value.Length == 0)
                continue;
            if (value == Nothing)
                skip.Add(line);
            else
                parts.Add(string.Create(CultureInfo.InvariantCulture, $"{line}={value.Trim()}"));
        }
        foreach (var (field, value) in form.Fields(Goes))
        {
            if (value.Length > 0 && value != Nothing)
                places.Add($"{field[Goes.Length..]}={value}");
        }
        return quote with { As = parts, At = places, Skip = skip };
    }
}
