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
        commands.Run("measure", "--vehicle", "tansy-hatch", "--card", "card.html", "--catalog", "default", "--catalog", Own);
    }
}
