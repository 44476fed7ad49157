using FitCheck.Cli.Asking;
using FitCheck.Cli.Commands;
using FitCheck.Page;

namespace FitCheck.Hostile;

/// <summary>Entries of every kind.</summary>
internal sealed class EntryBatch(Seeds seeds) : FolderBatch(seeds, seeds.Entries, "--catalog")
{
    private static readonly string[] Kinds =
        ["adapter", "amplifier", "line-converter", "crossover", "cup", "driver", "harness", "component-set", "source-unit", "sundry",
            "wiring"];

    protected override void More(Commands commands, Random random, IReadOnlyList<string> names)
    {
        var kind = Kinds[random.Next(Kinds.Length)];
        commands.Run("new", "part", kind, "--to", "table.csv", "--catalog", "default", "--catalog", Own);
        if (File.Exists("table.csv"))
            commands.Run("new", "part", kind, "--from", "table.csv", "-o", "back.yaml");
        commands.Run("find", Path.GetFileNameWithoutExtension(names[0]), "--catalog", "default", "--catalog", Own);
        foreach (var vehicle in (string[])["tansy-hatch", .. Left(names, "vehicles/").Take(10)])
            commands.Run("measure", "--vehicle", vehicle, "--card", "card.html", "--catalog", "default", "--catalog", Own);
        var folders = CommonOptions.Folders(["default", Own], []);
        commands.Asked($"new part {kind}", () => NewPartCommand.Asked(new RandomAnswers(commands, random, 80), kind, "asked.yaml",
            folders.Catalog));
        // It looks for what is missing, for seconds.
        if (random.Next(4) == 0)
        {
            commands.Asked("new build", () => NewBuild.Run(new RandomAnswers(commands, random, 40), "asked-build.yaml",
                Left(names, "vehicles/").FirstOrDefault(), folders));
        }
        if (Checker.Open(new CheckerOptions { Catalogs = folders.Catalog }).Checker is not { } checker)
            return;
        var visits = new PageVisits(new PageEngine(checker, PageVisits.Options), commands, random);
        foreach (var vehicle in (string[])[.. Left(names, "vehicles/").Take(3), "tansy-hatch"])
            visits.Opened($"vehicle:{vehicle}", "build", "b.yaml", File.ReadAllBytes("b.yaml"));
    }
}
