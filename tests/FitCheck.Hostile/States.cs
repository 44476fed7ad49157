using System.Text;
using FitCheck.Fuzz;

namespace FitCheck.Hostile;

/// <summary>States of a small catalog: as it is, and as somebody would send it who means harm.</summary>
internal sealed class States
{
    private static readonly string[] Builds = ["tansy-bare-tweeter", "tansy-door-swap"];

    private static readonly string[] Targets =
    [
        "", ".", "..", "/", "/etc/passwd", "../../..", "x", "/dev/zero", "/proc/self/fd/0", "catalog", "../catalog/builds", "b.yaml",
        new('a', 5000), "a\0b", "\n", "::error::x", "/dev/stdin", "../../../../../../../../etc",
    ];

    private static readonly string[] Names =
    [
        "..", ".", ".git", "::error::x.yaml", "##vso[x].yaml", "a\nb.yaml", "\u202Ex.yaml", "a\\b.yaml", "CON.yaml", " .yaml", "-x.yaml",
        new string('n', 300) + ".yaml", "\u0001.yaml", "x.YAML", "*.yaml", "\"q\".yaml", "@x.yaml", "x.yaml/y.yaml", "{{ x }}.yaml",
    ];

    private readonly Random _random;
    private readonly Shaker _shaker;
    private readonly List<string> _paths;

    public States(Seeds seeds, int seed)
    {
        _random = new Random(seed);
        Whole = Small(seeds);
        _paths = [.. Whole.Keys];
        _shaker = new Shaker([.. Whole.Values.Select(l => l.Bytes)], seed);
    }

    /// <summary>Two builds, what is named in them, and some rules.</summary>
    public SortedDictionary<string, Leaf> Whole { get; }

    /// <summary>One that was harmed in one to three places.</summary>
    public SortedDictionary<string, Leaf> Next(int number)
    {
        var state = new SortedDictionary<string, Leaf>(Whole, StringComparer.Ordinal);
        // Without any, the program's own count.
        if (_random.Next(3) == 0)
            _paths.Where(p => p.StartsWith("rules/", StringComparison.Ordinal)).ToList().ForEach(p => state.Remove(p));
        for (var times = _random.Next(1, 4); times > 0; times--)
            Harm(state, number);
        return state;
    }

    private void Harm(SortedDictionary<string, Leaf> state, int number)
    {
        var at = _random.Next(_paths.Count);
        var path = _paths[at];
        var folder = path[..path.LastIndexOf('/')];
        switch (_random.Next(12))
        {
            case 0:
                state.Remove(path);
                break;
            case 1:
                state.Remove(path);
                state[$"{folder}/{Any(Names)}"] = Whole[path];
                break;
            case 2:
                state[_random.Next(2) == 0 ? path : $"{folder}/{Any(Names)}"] = new Leaf(Leaf.Link, Encoding.UTF8.GetBytes(Any(Targets)));
                break;
            case 3:
                state["catalog/builds/new.yaml"] = new Leaf(Leaf.File, _shaker.Next(_paths.FindIndex(p => p.Contains("/builds/",
                    StringComparison.Ordinal))));
                break;
            case 4:
                state.Remove("catalog/builds/tansy-door-swap.yaml");
                state[$"catalog/builds/moved/{number}.yaml"] = new Leaf(Leaf.File, _shaker.Next(_paths.FindIndex(p => p.Contains("/builds/",
                    StringComparison.Ordinal))));
                break;
            case 5:
                state[Any(new[] { ".gitattributes", "catalog/.gitattributes" })] = new Leaf(Leaf.File,
                    "* export-ignore\n*.yaml filter=x text eol=crlf working-tree-encoding=UTF-16\n"u8.ToArray());
                state["catalog/part"] = new Leaf(Leaf.Module, []);
                break;
            case 6:
                state[$"catalog/{string.Concat(Enumerable.Repeat("d/", _random.Next(1, 90)))}x.yaml"] = Whole[path];
                break;
            default:
                state[path] = new Leaf(Leaf.File, _shaker.Next(at));
                break;
        }
    }

    /// <summary>Writes one as a folder; what the disk has no name for is left out.</summary>
    public static void Write(string folder, IReadOnlyDictionary<string, Leaf> state)
    {
        foreach (var (name, leaf) in state)
        {
            var path = Path.Combine(folder, name);
            // Nothing is written outside of it, or through a link of its own.
            if (leaf.Mode == Leaf.Module || name.Split('/').Any(p => p is ".." or "." or ".git") || path.Length > 3000)
                continue;
            try
            {
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                if (leaf.Mode == Leaf.Link)
                    File.CreateSymbolicLink(path, Encoding.UTF8.GetString(leaf.Bytes));
                else if (!Path.Exists(path))
                    File.WriteAllBytes(path, leaf.Bytes);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
            {
                // No name here.
            }
        }
    }

    private static SortedDictionary<string, Leaf> Small(Seeds seeds)
    {
        var builds = seeds.Builds.Where(b => Builds.Contains(b.Id)).ToList();
        var (taken, left) = (new List<Seed>(), seeds.Entries.ToList());
        // What is named in what was taken.
        for (var open = builds; open.Count > 0;)
        {
            var text = string.Join('\n', open.Select(s => Encoding.UTF8.GetString(s.Bytes)));
            open = [.. left.Where(s => text.Contains(s.Id, StringComparison.Ordinal))];
            taken.AddRange(open);
            left.RemoveAll(open.Contains);
        }
        var small = new SortedDictionary<string, Leaf>(StringComparer.Ordinal);
        foreach (var seed in builds)
            small[$"catalog/builds/{seed.Name}"] = new Leaf(Leaf.File, seed.Bytes);
        foreach (var seed in taken)
            small[$"catalog/{seed.Name}"] = new Leaf(Leaf.File, seed.Bytes);
        foreach (var seed in seeds.Rules.Where(r => r.Name.StartsWith("mount/", StringComparison.Ordinal)))
            small[$"rules/{seed.Name}"] = new Leaf(Leaf.File, seed.Bytes);
        return small;
    }

    private T Any<T>(IReadOnlyList<T> items) => items[_random.Next(items.Count)];
}
