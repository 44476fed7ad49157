namespace FitCheck.Hostile;

/// <summary>Rules of every family.</summary>
internal sealed class RuleBatch(Seeds seeds) : FolderBatch(seeds, seeds.Rules, "--rules")
{
    protected override void More(Commands commands, Random random, IReadOnlyList<string> names)
    {
        commands.Run("explain", "--rules", "default", "--rules", Own);
        foreach (var rule in Left(names, "").Take(20))
            commands.Run("explain", rule, "--rules", "default", "--rules", Own);
    }
}
