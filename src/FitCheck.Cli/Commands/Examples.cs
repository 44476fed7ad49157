namespace FitCheck.Cli.Commands;

/// <summary>Two examples or more for each command, told below its help.</summary>
internal static class Examples
{
    private static readonly Dictionary<string, string[]> OfCommand = new(StringComparer.Ordinal)
    {
        ["check"] = ["check build.yaml", "check build.yaml --format html --output report.html --sheet sheet.html",
            "check quote.csv --vehicle tansy-hatch"],
        ["suggest"] = ["suggest build.yaml", "suggest build.yaml --keep orrin-c165 --prefer changes --write better.yaml"],
        ["measure"] = ["measure build.yaml", "measure build.yaml --card card.html", "measure --vehicle new --card card.html"],
        ["lint"] = ["lint", "lint --catalog default --catalog mine --fix"],
        ["chart"] = ["chart --vehicle tansy-hatch", "chart --size 165 --status pass --format html --output chart.html"],
        ["impact"] = ["impact --from main", "impact --from ./before --to ./after --format markdown"],
        ["list"] = ["list build.yaml", "list build.yaml --tax 19 --format csv --output list.csv"],
        ["find"] = ["find tansy spacer", "find woofer 165 --kind driver --price-to 100", "find orrin-c165"],
        ["explain"] = ["explain", "explain mount/too-deep"],
        ["new"] = ["new build --output build.yaml", "new part driver --output my-woofer.yaml"],
        ["new build"] = ["new build --vehicle tansy-hatch --output build.yaml",
            "new build --from quote.csv --vehicle tansy-hatch --as 7=orrin-c165 --articles shop.csv --output quote.yaml"],
        ["new part"] = ["new part driver --output my-woofer.yaml", "new part driver --from drivers.csv --output drivers.yaml",
            "new part amplifier --to amplifiers.csv"],
        ["page"] = ["page", "page build.yaml --port 8080 --no-open"],
        ["schema"] = ["schema build", "schema driver"],
        ["completion"] = ["completion bash", "completion bash > fitcheck.completion"],
    };

    /// <summary>The lines for a command by its words, `new part`; none for the program itself, whose help has its own.</summary>
    public static IReadOnlyList<string> Of(string command) =>
        OfCommand.TryGetValue(command, out var lines) ? [.. lines.Select(l => $"fitcheck {l}")] : [];

    /// <summary>Writes them.</summary>
    public static void Tell(string command, TextWriter output)
    {
        if (Of(command) is not { Count: > 0 } lines)
            return;
        output.WriteLine("Examples:");
        foreach (var line in lines)
            output.WriteLine($"  {line}");
        output.WriteLine();
    }
}
