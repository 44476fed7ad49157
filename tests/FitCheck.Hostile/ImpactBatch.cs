using FitCheck.Foundation.Files;
using FitCheck.Reports.Impacts;

namespace FitCheck.Hostile;

/// <summary>
/// States of a small catalog, compared with what it is: as folders, as revisions of a repository with the working tree, and with each
/// other.
/// </summary>
internal sealed class ImpactBatch(Seeds seeds) : IBatch
{
    private static readonly string[] Odd =
        ["refs/heads/base^{tree}", "HEAD", "HEAD:catalog", "@{1}", ":/x", "base..base", "base~5", "x y", "refs/", "$(x)", "@", "base:"];

    public int Run(Commands commands, int seed, int count)
    {
        var random = new Random(seed);
        var states = new States(seeds, seed);
        States.Write(".", states.Whole);
        var repository = new GitObjects(".git");
        repository.Branch("base", repository.Commit(repository.Tree(states.Whole, t => t)));
        for (var i = 0; i < count; i++)
        {
            var state = states.Next(i);
            string named;
            if (random.Next(3) == 0)
            {
                named = $"./s{i}";
                States.Write(named, state);
            }
            else
            {
                repository.Written.Clear();
                named = $"refs/heads/s{i}";
                repository.Branch($"s{i}", repository.Commit(repository.Tree(state, t => random.Next(12) == 0 ? Damaged(t, random) : t)));
                // Where all objects are there from states before, none is new.
                if (random.Next(15) == 0 && repository.Written.Count > 0)
                    Damage(repository.Written[random.Next(repository.Written.Count)], random);
            }
            Compared(commands, random, named);
            if (named.StartsWith("./", StringComparison.Ordinal))
                Directory.Delete(named, recursive: true);
            commands.Hold(Directory.GetDirectories(Path.GetTempPath(), PassingName.Of("fitcheck-revision-") + "*").Length == 0,
                "a revision's folder is left");
        }
        return count;
    }

    private static void Compared(Commands commands, Random random, string named)
    {
        string[] told = [.. ImpactReports.Formats.SelectMany(f => (string[])["--format", f, "-o", $"impact.{f}"])];
        string[] accept = random.Next(6) == 0 ? ["--accept", random.Next(2) == 0 ? "all" : "tansy-door-swap"] : [];
        string[] sides = random.Next(8) switch
        {
            0 => ["--from", named],
            1 => ["--from", "refs/heads/base", "--to", named],
            2 => ["--from", named, "--to", named],
            3 => ["--from", named, "--to", Odd[random.Next(Odd.Length)]],
            4 => ["--from", Odd[random.Next(Odd.Length)], "--to", named],
            5 => ["--from", named, "--to", "refs/heads/base"],
            _ => ["--from", ".", "--to", named],
        };
        commands.Run(["impact", .. sides, .. accept, .. told]);
    }

    private static byte[] Damaged(byte[] tree, Random random)
    {
        var id = new byte[20];
        random.NextBytes(id);
        switch (random.Next(8))
        {
            case 0:
                return [.. tree, .. GitObjects.Entry("100644", "missing.yaml", id)];
            case 1:
                return [.. tree, .. tree];
            case 2:
                return tree[..random.Next(tree.Length + 1)];
            case 3:
                return [.. tree, .. GitObjects.Entry("40000", "..", id)];
            case 4:
                return [.. tree,
                    .. GitObjects.Entry(random.Next(2) == 0 ? "777" : "40000", "odd.yaml", tree.Length > 20 ? tree[^20..] : id)];
            case 5:
                return [.. tree, .. GitObjects.Entry("100644", "/etc/x.yaml", tree.Length > 20 ? tree[^20..] : id)];
            case 6:
                return [.. tree, .. "100644 \xff\xfe.yaml\0"u8.ToArray(), .. tree.Length > 20 ? tree[^20..] : id];
            default:
                var bytes = tree.ToArray();
                if (bytes.Length > 0)
                    bytes[random.Next(bytes.Length)] ^= (byte)(1 << random.Next(8));
                return bytes;
        }
    }

    private static void Damage(string file, Random random)
    {
        var bytes = File.ReadAllBytes(file);
        bytes[random.Next(bytes.Length)] ^= 0x10;
        File.WriteAllBytes(file, random.Next(3) == 0 ? bytes[..random.Next(bytes.Length)] : bytes);
    }
}
