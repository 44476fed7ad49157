using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using FitCheck.Page;

namespace FitCheck.Hostile;

/// <summary>Somebody at the page who opens what a stranger sent, presses whatever there is, and alters what the form carries.</summary>
internal sealed partial class PageVisits(PageEngine engine, Commands commands, Random random)
{
    private static readonly string[] Odd =
        ["", "x", "-1", "999999999999999999999", "::", "step:", "step:0.9.YQ==", "take:", "slot:@", "\0", "[[[[", "{", "1.2.YQ==", "-"];

    /// <summary>How they come to the first page.</summary>
    public static PageOptions Options { get; } = new() { SearchTime = TimeSpan.FromSeconds(1) };

    /// <summary>How many answers told a verdict, and how many were papers.</summary>
    public (int Verdicts, int Papers) Told { get; private set; }

    /// <summary>Opens a file in a field of the page, and goes on from there.</summary>
    /// <param name="begun">What is pressed before it, such as the vehicle of a list.</param>
    /// <param name="field">`build` or `quote`.</param>
    /// <param name="name">The name of the file.</param>
    /// <param name="bytes">What is in it.</param>
    public void Opened(string? begun, string field, string name, byte[] bytes)
    {
        var html = Asked("", begun is null ? [] : [new("do", begun)], []);
        html = Asked("", [.. Form(html), new("do", field == "build" ? "open" : field)], [new PageFile(field, name, bytes)]);
        for (var times = random.Next(1, 5); times > 0; times--)
        {
            var fields = Form(html);
            if (fields.Count > 0 && random.Next(3) == 0)
                Alter(fields);
            var buttons = Button().Matches(html).Select(m => WebUtility.HtmlDecode(m.Groups[1].Value)).ToList();
            fields.AddRange(Radio().Matches(html).Where(_ => random.Next(2) == 0)
                .Select(m => KeyValuePair.Create(m.Groups[1].Value, WebUtility.HtmlDecode(m.Groups[2].Value))));
            fields.AddRange(Reading().Matches(html).Where(_ => random.Next(3) == 0)
                .Select(m => KeyValuePair.Create(m.Groups[1].Value, random.Next(2) == 0 ? "80 mm" : Any(Odd))));
            fields.Add(new("do", buttons.Count > 0 && random.Next(8) > 0 ? Any(buttons) : Any(Odd)));
            var asked = random.Next(8) switch
            {
                0 => "choices",
                1 => "print",
                2 => "save",
                3 when random.Next(12) == 0 => "ways",
                _ => "",
            };
            fields.Add(new("what", Any(new[] { "report", "sheet", "list" })));
            var answer = Asked(asked, fields, []);
            html = asked.Length == 0 ? answer : html;
        }
    }

    private string Asked(string name, IReadOnlyList<KeyValuePair<string, string>> fields, IReadOnlyList<PageFile> files)
    {
        // What fails is to be found again.
        File.WriteAllText("asked.txt", $"{name}\n{string.Join('\n', fields.Select(f => $"{f.Key}={f.Value}"))}\n");
        foreach (var file in files)
            File.WriteAllBytes("opened.bin", file.Bytes);
        PageAnswer? answer = null;
        commands.Timed($"page/{name} {fields.LastOrDefault(f => f.Key == "do").Value}", () => answer = engine.Answer(new PageRequest
        {
            Name = name,
            Fields = fields,
            Files = files,
            IsPart = name == "choices" || random.Next(2) == 0,
        }));
        commands.Hold(answer!.Status is 200 or 400, $"status {answer.Status}");
        Told = (Told.Verdicts + (Verdict().IsMatch(answer.Text) ? 1 : 0), Told.Papers + (name == "print" && answer.Status == 200 ? 1 : 0));
        if (answer.ContentType.StartsWith("text/html", StringComparison.Ordinal))
            commands.Hold(!Harm().IsMatch(answer.Text), "a script or a style that the page's policy refuses");
        return answer.Text;
    }

    private void Alter(List<KeyValuePair<string, string>> fields)
    {
        var at = random.Next(fields.Count);
        var (name, value) = fields[at];
        fields[at] = new(name, random.Next(3) switch
        {
            0 => Any(Odd),
            1 => value[..random.Next(value.Length + 1)],
            _ => value.Insert(random.Next(value.Length + 1), Any(Odd)),
        });
    }

    private static List<KeyValuePair<string, string>> Form(string html) => [.. Hidden().Matches(html)
        .Select(m => KeyValuePair.Create(WebUtility.HtmlDecode(m.Groups[1].Value), WebUtility.HtmlDecode(m.Groups[2].Value)))];

    private T Any<T>(IReadOnlyList<T> items) => items[random.Next(items.Count)];

    [GeneratedRegex("<input type=\"hidden\" name=\"([^\"]*)\" value=\"([^\"]*)\"")]
    private static partial Regex Hidden();

    [GeneratedRegex("name=\"do\" value=\"([^\"]*)\"")]
    private static partial Regex Button();

    [GeneratedRegex("<input type=\"radio\" name=\"([^\"]*)\" value=\"([^\"]*)\"")]
    private static partial Regex Radio();

    [GeneratedRegex("<input id=\"[^\"]*\" name=\"(read\\.[^\"]*)\"")]
    private static partial Regex Reading();

    [GeneratedRegex("id=\"verdict\"><span class=\"status status-")]
    private static partial Regex Verdict();

    [GeneratedRegex("<script(?! src=\"[a-z.]+\" defer></script>)|<style|javascript:")]
    private static partial Regex Harm();
}
