// Whole processes, from start to end; compare the ratios, not the times.
// All by `dotnet run -c Release --project tests/FitCheck.Benchmarks --` and
//
// [--cold] [--runs N] [BUILD...]                                        a check beside an empty program
// --chart [COPIES|CATALOG]                                              pairs of a driver and a position a second, in this process
// --generate PARTS --output FOLDER [--vehicles N] [--per-file N|all]    a catalog of invented parts
// --growth                                                              what grows with what
// --lint [--runs N] [--without-spectral]                                lint beside general-purpose tools
// --page [--actions N]                                                  the local page, by real requests
// --page --in-browser                                                   both pages beside each other, by real clicks
// --suggest [SECONDS]                                                   how long `suggest` takes among 50,000 parts
// --warm [--runs N] [BUILD]                                             one more check of a checker that is open, in this process

using System.Globalization;
using FitCheck.Benchmarks;

if (args is ["--chart", ..])
{
    return args switch
    {
        [_] => ChartSpeed.Run(20),
        [_, var copies] when int.TryParse(copies, NumberStyles.None, CultureInfo.InvariantCulture, out var count) => ChartSpeed.Run(count),
        [_, var folder] when Directory.Exists(folder) => ChartSpeed.Run(folder),
        _ => Wrong.Usage("After `--chart` comes the number of copies of the catalog, the folder of another catalog, or nothing."),
    };
}
if (args.Contains("--generate"))
    return Generate.Run(args);
if (args is ["--growth", ..])
    return Growth.Run(args);
if (args.Contains("--lint"))
    return LintBenchmark.Run(args);
if (args is ["--suggest", ..])
    return SuggestBenchmark.Run(args);
if (args is ["--page", "--in-browser"])
    return await PageInBrowser.Run();
if (args is ["--page", ..])
    return PageBenchmark.Run(args);
if (args is ["--warm", ..])
    return WarmBenchmark.Run(args);
return CheckBenchmark.Run(args);
