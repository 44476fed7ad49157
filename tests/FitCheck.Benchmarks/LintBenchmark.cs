using System.Globalization;
using FitCheck.Benchmarks.Synthetic;

namespace FitCheck.Benchmarks;

/// <summary>
/// Lint beside general-purpose tools on the same files: everything new, nothing changed, one entry changed; one file a kind and one file an
/// entry. Runs are interleaved. Growth is the slope of log time over log size between the smallest and the largest catalog.
/// </summary>
internal static class LintBenchmark
{
    private static readonly int[] Sizes = [1_000, 10_000, 50_000];

    public static int Run(string[] args)
    {
        var runs = 5;
        for (var i = 0; i < args.Length; i++)
        {
            if (args[i] == "--runs" && i + 1 < args.Length
                && int.TryParse(args[i + 1], NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number > 0)
                (runs, i) = (number, i + 1);
            else if (args[i] is not ("--lint" or "--without-spectral"))
                return Wrong.Usage("--lint [--runs N] [--without-spectral]");
        }
        var work = Directory.CreateTempSubdirectory("fitcheck-benchmark-");
        try
        {
            var peers = Peers.Install(work.FullName);
            var spectral = !args.Contains("--without-spectral");
            var series = new Dictionary<string, List<(double Bytes, double Milliseconds)>>(StringComparer.Ordinal);
            foreach (var parts in Sizes)
                Measure($"{parts} parts, 500 vehicles, one file a kind", new SyntheticCatalog(parts, 500), int.MaxValue, series);
            foreach (var (name, points) in series)
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"growth {Slope(points),5:0.00}  {name}"));
            Measure("1500 parts, 500 vehicles, one file an entry", new SyntheticCatalog(1_500, 500), 1, []);
            Measure("19500 parts, 500 vehicles, ten entries a file", new SyntheticCatalog(19_500, 500), 10, []);
            return 0;

            void Measure(string title, SyntheticCatalog catalog, int perFile, Dictionary<string, List<(double, double)>> into)
            {
                var folder = Path.Combine(work.FullName, "catalog");
                var (files, bytes) = catalog.Write(folder, perFile);
                var programs = Programs(folder, work.FullName, perFile > 1, peers, spectral);
                foreach (var program in programs)
                    program.Run();
                programs.ForEach(p => p.Clear());
                for (var run = 0; run < runs; run++)
                {
                    // The slowest tool needs no more than two runs to show what it is.
                    foreach (var program in programs.Where(p => run < 2 || p.Name != "spectral-cli"))
                        program.Run();
                }
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"\n{title}: {files} files, {bytes / 1e6:0.0} MB"));
                foreach (var program in programs)
                {
                    var ratio = peers is null ? ""
                        : string.Create(CultureInfo.InvariantCulture,
                        $"{program.Median / programs.First(p => p.Name == "ajv-cli").Median,7:0.000} of ajv-cli");
                    Console.WriteLine(
                        string.Create(CultureInfo.InvariantCulture,
                            $"{program.Median,9:0.0} ms {ratio} {program.PeakMegabytes(),7:0} MB  {program.Name}"));
                    into.TryAdd(program.Name, []);
                    into[program.Name].Add((bytes, program.Median));
                }
                Directory.Delete(folder, recursive: true);
            }
        }
        finally
        {
            work.Delete(recursive: true);
        }
    }

    private static List<Timed> Programs(string catalog, string work, bool lists, Peers? peers, bool spectral)
    {
        var changed = Directory.GetFiles(Path.Combine(catalog, "amplifiers")).Order(StringComparer.Ordinal).First();
        var text = File.ReadAllText(changed);
        var runs = 0;
        List<Timed> programs =
        [
            Lint("fitcheck lint, everything new", "cold", forget: true, null),
            // What another program of this run changed is read before it counts, and then the files have to be older than a later change
            // could hide.
            Lint("fitcheck lint, nothing changed", "warm", forget: false, Settle),
            Lint("fitcheck lint, one entry changed", "change", forget: false,
                () => File.WriteAllText(changed, text.Replace("notes:", "notes: ", StringComparison.Ordinal) + $"# {++runs}\n")),
        ];
        if (peers is not null)
            programs.Add(peers.Ajv(catalog, lists));
        if (peers is not null && spectral)
            programs.Add(peers.Spectral(catalog, lists));
        return programs;

        void Settle()
        {
            Thread.Sleep(2_100);
            Lint("", "warm", forget: false, null).Run();
        }

        Timed Lint(string name, string cache, bool forget, Action? before) =>
            new(name, Built.Program("src", "FitCheck.Cli", "fitcheck"), ["lint", "--catalog", catalog])
            {
                CacheFolder = Directory.CreateDirectory(Path.Combine(work, cache)).FullName,
                ForgetFirst = forget,
                Before = before,
            };
    }

    private static double Slope(List<(double Bytes, double Milliseconds)> points) =>
        Math.Log(points[^1].Milliseconds / points[0].Milliseconds) / Math.Log(points[^1].Bytes / points[0].Bytes);
}
