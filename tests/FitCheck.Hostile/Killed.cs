namespace FitCheck.Hostile;

/// <summary>A command that writes, and what it needs.</summary>
/// <param name="Words">The command line.</param>
/// <param name="Old">Files with yesterday's text, which it writes over.</param>
/// <param name="Keeps">True when it keeps a file that is there already: a run after one that wrote it says so.</param>
/// <param name="Typed">What somebody types on a terminal; null where there is none.</param>
internal sealed record Killed(string[] Words, string[] Old, bool Keeps = false, string? Typed = null)
{
    // Impedance and polarity are skipped; the third question is for a length.
    private const string OneReading = "\r\r3 1/2 in\rstop\r";

    public static readonly IReadOnlyList<Killed> All =
    [
        Of("check b.yaml --format html -o r.html --format json -o r.json --sheet sheet.html", "r.html", "r.json"),
        Of("check b.yaml --format junit -o r.xml --format sarif -o r.sarif --format markdown -o r.md --format github -o r.log"),
        Of("list b.yaml --format csv -o l.csv --format html -o l.html", "l.csv"),
        Of("suggest b.yaml --format json -o s.json"),
        Of("suggest b.yaml --write better.yaml") with { Keeps = true },
        Of("suggest b.yaml --write b.yaml --force"),
        Of("lint --fix --catalog default --catalog own -o lint.txt", "lint.txt"),
        Of("lint --format sarif -o lint.sarif"),
        Of("measure b.yaml --card card.html", "card.html"),
        Of("measure --vehicle new --card card.html"),
        Of("measure open.yaml --write m.yaml --force", "m.yaml") with { Typed = OneReading },
        Of("measure open.yaml --write m.yaml") with { Typed = OneReading, Keeps = true },
        Of("chart --vehicle tansy-hatch --format html -o chart.html --format csv -o chart.csv"),
        Of("impact --from state --to state --format json -o i.json", "i.json"),
        Of("impact --from HEAD --format json -o i.json"),
        Of("new build -o n.yaml") with { Keeps = true },
        Of("new part driver -o d.yaml") with { Keeps = true },
        Of("new part driver --to t.csv") with { Keeps = true },
        Of("new part cup --from cups.csv -o cups.yaml") with { Keeps = true },
        Of("new part cup --from cups.csv -o made/") with { Keeps = true },
        Of("new build --from list.csv --vehicle tansy-hatch --articles shop.csv -o q.yaml") with { Keeps = true },
    ];

    public override string ToString() => string.Join(' ', Words);

    private static Killed Of(string words, params string[] old) => new(words.Split(' '), old);
}
