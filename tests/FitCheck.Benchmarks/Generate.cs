using System.Globalization;
using FitCheck.Benchmarks.Synthetic;

namespace FitCheck.Benchmarks;

/// <summary>Writes a catalog of invented parts for measurements.</summary>
internal static class Generate
{
    public static int Run(string[] args)
    {
        var options = new Dictionary<string, string>(StringComparer.Ordinal) { ["--vehicles"] = "500", ["--per-file"] = "1" };
        for (var i = 0; i < args.Length; i += 2)
        {
            if (args[i] is not ("--generate" or "--output" or "--vehicles" or "--per-file") || i + 1 == args.Length)
                return Wrong.Usage("--generate PARTS --output FOLDER [--vehicles 500] [--per-file 1|N|all]");
            options[args[i]] = args[i + 1];
        }
        if (!Number(options["--generate"], 100, out var parts) || !Number(options["--vehicles"], 0, out var vehicles)
            || !options.TryGetValue("--output", out var folder))
            return Wrong.Usage("--generate takes a number of parts of at least 100, and --output a folder");
        var perFile = int.MaxValue;
        if (options["--per-file"] != "all" && !Number(options["--per-file"], 1, out perFile))
            return Wrong.Usage("--per-file takes `all` or a number of entries");
        if (Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any())
            return Wrong.Usage($"{folder} is not empty");
        var (files, bytes) = new SyntheticCatalog(parts, vehicles).Write(folder, perFile);
        Console.WriteLine(
            string.Create(CultureInfo.InvariantCulture, $"{parts} parts and {vehicles} vehicles in {files} files, {bytes / 1e6:0.0} MB"));
        return 0;
    }

    private static bool Number(string text, int least, out int number) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number) && number >= least;
}
