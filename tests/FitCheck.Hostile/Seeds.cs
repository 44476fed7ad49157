namespace FitCheck.Hostile;

/// <summary>A document that inputs are made of.</summary>
/// <param name="Name">Its file, from its folder on.</param>
/// <param name="Bytes">What is in it.</param>
internal sealed record Seed(string Name, byte[] Bytes)
{
    public string Id => Path.GetFileNameWithoutExtension(Name);
}

/// <summary>The repository's own documents, in an order that is the same everywhere.</summary>
internal sealed class Seeds
{
    private readonly string _root;

    public Seeds()
    {
        _root = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(_root, "FitCheck.sln")))
            _root = Path.GetDirectoryName(_root) ?? throw new InvalidOperationException("FitCheck.sln stands in no folder above");
        Builds = In("catalog/builds", "*.yaml");
        Entries = [.. In("catalog", "*.yaml").Where(s => !s.Name.StartsWith("builds/", StringComparison.Ordinal)
            && !s.Name.StartsWith("starters/", StringComparison.Ordinal))];
        Rules = [.. In("rules", "*.yaml").Where(s => s.Name.Contains('/', StringComparison.Ordinal))];
        Lists = [.. In("tests/cases/tills", "*.csv"), .. In("tests/cases/tills", "*.txt"), .. In("tests/cases/tills", "*.xlsx")];
    }

    public IReadOnlyList<Seed> Builds { get; }
    public IReadOnlyList<Seed> Entries { get; }
    public IReadOnlyList<Seed> Rules { get; }
    public IReadOnlyList<Seed> Lists { get; }

    private IReadOnlyList<Seed> In(string folder, string pattern)
    {
        var top = Path.Combine(_root, folder);
        return [.. Directory.GetFiles(top, pattern, SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(top, f).Replace('\\', '/')).Order(StringComparer.Ordinal)
            .Select(f => new Seed(f, File.ReadAllBytes(Path.Combine(top, f))))];
    }
}
