using System.IO.Compression;
using System.Text;
using FitCheck.Fuzz;

namespace FitCheck.Hostile;

/// <summary>Tables of data sheets and sellers' lists, as text and as workbooks.</summary>
internal sealed class TableBatch(Seeds seeds) : IBatch
{
    private static readonly string[] Kinds = ["driver", "adapter", "amplifier", "cup", "sundry", "harness", "crossover", "wiring"];

    public int Run(Commands commands, int seed, int count)
    {
        var random = new Random(seed);
        var kind = Kinds[random.Next(Kinds.Length)];
        commands.Run("new", "part", kind, "--to", "sheet.csv");
        var sheets = new Shaker([File.ReadAllBytes("sheet.csv")], seed);
        var lists = seeds.Lists.Select((s, i) => (Seed: s, Shaker: new Shaker([s.Bytes], seed + i))).ToList();
        var articles = new Shaker(["article,part\n17,orrin-t25\n4711,orrin-c165\n\"a,b\",cup-45-tansy\n"u8.ToArray()], seed);
        Directory.CreateDirectory("entries");
        for (var i = 0; i < count; i++)
        {
            if (i % 3 == 0)
            {
                File.WriteAllBytes($"t{i}.csv", sheets.Next());
                string[] to = (i % 4) switch { 0 => ["-o", $"t{i}.yaml"], 1 => ["-o", "entries/"], _ => [] };
                commands.Run(["new", "part", kind, "--from", $"t{i}.csv", .. to]);
                continue;
            }
            var (list, shaker) = lists[random.Next(lists.Count)];
            var name = $"l{i}{Path.GetExtension(list.Name)}";
            File.WriteAllBytes(name, name.EndsWith(".xlsx", StringComparison.Ordinal) ? Workbook(list.Bytes, shaker, random, seed + i)
                : shaker.Next());
            Listed(commands, name, i, kind, articles);
        }
        return count;
    }

    // A shop's file of numbers, shaken too, and what somebody says of lines that may be others.
    private static string[] Known(Shaker articles, int i)
    {
        if (i % 5 == 0)
            File.WriteAllBytes($"a{i}.csv", articles.Next());
        return [.. i % 3 == 0 ? (string[])[] : ["--articles", $"a{i}.csv"], .. (i % 7) switch
        {
            1 => (string[])["--skip", "2"],
            2 => ["--as", "2=orrin-t25"],
            3 => ["--at", "orrin-t25=front-door-left"],
            4 => ["--skip", "2", "--as", "3=orrin-c165", "--at", "orrin-c165=front-door-left,front-door-right"],
            _ => [],
        }];
    }

    private static void Listed(Commands commands, string name, int i, string kind, Shaker articles)
    {
        switch (i % 12)
        {
            case 1:
                commands.Run(["check", name, "--vehicle", "tansy-hatch", "--format", "json", "-o", $"c{i}.json", .. Known(articles, i)]);
                break;
            case 4:
                commands.Run("list", name, "--vehicle", "corvid-sedan", "--format", "csv", "-o", $"c{i}.csv");
                break;
            case 7:
                commands.Run("suggest", name, "--vehicle", "tansy-hatch", "--time", "1", "-o", $"c{i}.txt");
                break;
            case 10:
                commands.Run("new", "part", kind, "--from", name);
                break;
            default:
                commands.Run(["new", "build", "--from", name, "--vehicle", "tansy-hatch", "-o", $"n{i}.yaml", .. Known(articles, i)]);
                break;
        }
    }

    // Either the file is damaged, or one of those that it is packed of.
    private static byte[] Workbook(byte[] whole, Shaker shaker, Random random, int seed)
    {
        if (random.Next(3) == 0)
            return shaker.Next();
        using var packed = new MemoryStream();
        packed.Write(whole);
        using (var archive = new ZipArchive(packed, ZipArchiveMode.Update, leaveOpen: true))
        {
            var entry = archive.Entries[random.Next(archive.Entries.Count)];
            string text;
            using (var reader = new StreamReader(entry.Open()))
                text = reader.ReadToEnd();
            var name = entry.FullName;
            entry.Delete();
            // XML has no lines: each of its tags is one.
            var changed = new Shaker([Encoding.UTF8.GetBytes(text.Replace(">", ">\n", StringComparison.Ordinal))], seed).Next();
            using var writer = archive.CreateEntry(name).Open();
            writer.Write(changed);
        }
        return packed.ToArray();
    }
}
