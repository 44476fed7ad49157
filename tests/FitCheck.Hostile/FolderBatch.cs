using System.Text;
using FitCheck.Fuzz;
using FitCheck.Reports;
using FitCheck.Reports.Charts;
using FitCheck.Reports.Suggestions;

namespace FitCheck.Hostile;

/// <summary>
/// A catalog or rules folder of a shop: first as it is, which `lint` tells the places of; then without what was refused, so that the rest
/// is read by every command to its end.
/// </summary>
internal abstract class FolderBatch(Seeds seeds, IReadOnlyList<Seed> from, string option) : IBatch
{
    /// <summary>The folder that is made.</summary>
    protected const string Own = "own";

    public int Run(Commands commands, int seed, int count)
    {
        var random = new Random(seed);
        var shaker = new Shaker([.. from.Select(s => s.Bytes)], seed);
        var names = new List<string>();
        for (var i = 0; i < count; i++)
        {
            var at = random.Next(from.Count);
            // Half of them lie over what there is, the other half are new.
            var name = random.Next(2) == 0 ? from[at].Name : from[at].Name.Replace(from[at].Id, $"{from[at].Id}-{i}",
                StringComparison.Ordinal);
            if (File.Exists(Path.Combine(Own, name)))
                name = from[at].Name.Replace(from[at].Id, $"{from[at].Id}-{i}", StringComparison.Ordinal);
            var path = Path.Combine(Own, name);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllBytes(path, Named(shaker.Next(at), from[at].Id, Path.GetFileNameWithoutExtension(name)));
            names.Add(name);
        }
        var build = seeds.Builds[random.Next(seeds.Builds.Count)];
        File.WriteAllBytes("b.yaml", build.Bytes);
        Directory.CreateDirectory("copy");
        foreach (var name in names)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Path.Combine("copy", name))!);
            File.Copy(Path.Combine(Own, name), Path.Combine("copy", name));
        }
        commands.Run("lint", "--fix", option, "copy", "-o", "fix.txt");
        commands.Run("check", "b.yaml", option, "default", option, Own, "--format", "json", "-o", "refused.json");
        // What others need may go with what is refused.
        for (var round = 0; round < 4 && Refused(commands, random); round++)
        {
        }
        commands.Run("check", "b.yaml", option, "default", option, Own, "--format", "json", "-o", "check.json", "--format", "html", "-o",
            "check.html");
        commands.Run("list", "b.yaml", option, "default", option, Own, "--format", "json", "-o", "list.json");
        commands.Run("measure", "b.yaml", option, "default", option, Own);
        var vehicle = option == "--catalog" && Left(names, "vehicles/").FirstOrDefault() is { } own ? own : "tansy-hatch";
        commands.Run(["chart", "--vehicle", vehicle, option, "default", option, Own,
            .. ChartReports.Formats.SelectMany(f => (string[])["--format", f, "-o", $"chart.{f}"])]);
        commands.Run("find", "a", option, "default", option, Own);
        if (random.Next(8) == 0)
        {
            commands.Run("suggest", "b.yaml", "--time", "1", option, "default", option, Own, "--format",
                SuggestionReports.Formats[random.Next(SuggestionReports.Formats.Length)], "-o", "suggest.out");
        }
        More(commands, random, names);
        return count;
    }

    /// <summary>Commands of the sort's own.</summary>
    protected abstract void More(Commands commands, Random random, IReadOnlyList<string> names);

    /// <summary>The ids of those that were not refused, from a folder or any.</summary>
    protected static IEnumerable<string> Left(IReadOnlyList<string> names, string folder) => names
        .Where(n => n.StartsWith(folder, StringComparison.Ordinal) && File.Exists(Path.Combine(Own, n)))
        .Select(n => folder.Length == 0 ? n[..^".yaml".Length] : Path.GetFileNameWithoutExtension(n));

    // Takes away what lint calls wrong; true when there was some.
    private bool Refused(Commands commands, Random random)
    {
        var other = ReportList.LintFormats[random.Next(ReportList.LintFormats.Length)];
        commands.Run("lint", option, "default", option, Own, "--format", "text", "-o", "lint.txt", "--format", "json", "-o", "lint.json",
            "--format", other, "-o", "lint.out");
        var told = File.ReadAllText("lint.txt");
        commands.Placed(told, mustSay: false);
        var any = false;
        foreach (var line in told.Split('\n').Where(l => l.Contains(": error: ", StringComparison.Ordinal)
            && l.StartsWith(Own + "/", StringComparison.Ordinal)))
        {
            var file = line[..(line.IndexOf(".yaml", StringComparison.Ordinal) + ".yaml".Length)];
            any |= File.Exists(file);
            File.Delete(file);
        }
        return any;
    }

    private static byte[] Named(byte[] bytes, string id, string name) =>
        id == name ? bytes : Encoding.Latin1.GetBytes(Encoding.Latin1.GetString(bytes).Replace(id, name, StringComparison.Ordinal));
}
