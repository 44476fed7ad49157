// Whole processes, from start to end: `dotnet run -c Release --project tests/FitCheck.Benchmarks -- [--cold] [--runs N] [BUILD…]`.
// Or `-- --chart [COPIES]`: pairs of a driver and a position a second, in this process.
// The runs of the programs are interleaved, so that a busy machine slows all of them alike; compare the ratios, not the times.
using System.Globalization;
using FitCheck.Benchmarks;

if (args is ["--chart", ..])
    return args.Length > 2 || (args.Length == 2 && !int.TryParse(args[1], NumberStyles.None, CultureInfo.InvariantCulture, out _))
        ? Wrong("After `--chart` comes the number of copies of the catalog, or nothing.")
        : ChartSpeed.Run(args.Length == 2 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 20);
var cold = false;
var runs = 40;
var builds = new List<string>();
for (var i = 0; i < args.Length; i++)
{
    if (args[i] == "--cold")
        cold = true;
    else if (args[i] == "--runs" && i + 1 < args.Length && int.TryParse(args[i + 1], NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number > 0)
        (runs, i) = (number, i + 1);
    else if (args[i].StartsWith('-'))
        return Wrong($"`{args[i]}` is no option here: --cold, --runs N, and builds.");
    else
        builds.Add(args[i]);
}
if (builds.Count == 0)
    builds.Add(Built.Path("catalog", "builds", "front-rear-two-amps.yaml"));
if (builds.Find(b => !File.Exists(b)) is { } missing)
    return Wrong($"There is no {missing}.");

var cache = Directory.CreateTempSubdirectory("fitcheck-benchmark-");
try
{
    var empty = new Timed("an empty .NET program", Built.Program("tests", "FitCheck.EmptyProgram"), []);
    var check = new Timed($"fitcheck check {string.Join(' ', builds.Select(Path.GetFileName))}", Built.Program("src", "FitCheck.Cli", "fitcheck"), ["check", .. builds])
    {
        CacheFolder = cache.FullName,
        ForgetFirst = cold,
    };
    // Not counted: files into the system's cache, and a warm cache of the program's own.
    empty.Run();
    check.Run();
    empty.Clear();
    check.Clear();
    for (var i = 0; i < runs; i++)
    {
        empty.Run();
        check.Run();
    }
    Console.WriteLine($"{runs} runs each, {(cold ? "without" : "with")} what earlier runs remember");
    Console.WriteLine(empty.Line());
    Console.WriteLine(check.Line());
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"ratio of the medians {check.Median / empty.Median:0.00}"));
    return 0;
}
finally
{
    cache.Delete(recursive: true);
}

static int Wrong(string what)
{
    Console.Error.WriteLine(what);
    return 3;
}
