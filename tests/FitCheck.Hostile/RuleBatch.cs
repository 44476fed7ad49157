namespace FitCheck.Hostile;

/// <summary>Rules of every family.</summary>
internal sealed class RuleBatch(Seeds seeds) : FolderBatch(seeds, seeds.Rules, "--rules")
{
    protected override void More(Commands commands, Random random, IReadOnlyList<string> names)
    {
        commands.Run("explain", "--rules", "default", "--rules", Own);
        if (names.FirstOrDefault(n => File.Exists(Path.Combine(Own, n))) is { } left)
            commands.Run("explain", left[..^".yaml".Length], "--rules", "default", "--rules", Own);
    }
}
