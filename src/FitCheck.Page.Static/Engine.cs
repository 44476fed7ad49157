using System.Globalization;
using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using FitCheck.Foundation;

namespace FitCheck.Page.Static;

/// <summary>What the worker's script may call. One thread, one call at a time: who gives up a request ends the worker.</summary>
[SupportedOSPlatform("browser")]
internal static partial class Engine
{
    // Each of another sort, as a form would name them.
    private static readonly string[] Sides = ["places", "measure", "buy"];
    private static PageEngine? _engine;

    /// <summary>Lays out what was packed, and opens it.</summary>
    [JSExport]
    internal static void Open(byte[] packed)
    {
        Bundle.Unpack(packed, "/");
        // Packed where it was found valid by this very program, so that nothing is validated again.
        var opened = Checker.Open(new CheckerOptions { Catalogs = ["/catalog"], Rules = ["/rules"], Cache = ValidationCache.In("/valid") });
        _engine = new PageEngine(
            opened.Checker ?? throw new InvalidDataException(string.Join('\n', opened.Problems.Select(p => p.ToString()))),
            new PageOptions { TemplatesDirectory = "/reports", ChoicesAtOnce = 3 });
    }

    /// <summary>Answers a request.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="fields">A name and a value of each field in turn.</param>
    /// <param name="files">The field, the name and the bytes, as Base64, of each file in turn.</param>
    /// <param name="isPart">True where a script takes a part of the page.</param>
    /// <param name="job">By which word its progress is asked for.</param>
    /// <returns>Status, content type, the name to save it as or nothing, and the body.</returns>
    [JSExport]
    internal static string[] Answer(string name, string[] fields, string[] files, bool isPart, string job)
    {
        var answer = _engine!.Answer(new PageRequest
        {
            Name = name,
            Fields = [.. fields.Chunk(2).Select(f => KeyValuePair.Create(f[0], f[1]))],
            Files = [.. files.Chunk(3).Select(f => new PageFile(f[0], f[1], Convert.FromBase64String(f[2])))],
            IsPart = isPart,
            Progress = job.Length == 0 ? null : new Teller(job),
        });
        return [answer.Status.ToString(CultureInfo.InvariantCulture), answer.ContentType, answer.SaveAs ?? "", answer.Text];
    }

    /// <summary>
    /// Shows a build to nobody, one side of the page a step: what is done for the first time is slow here, and nobody has pressed anything
    /// yet. False when there is no such step any more.
    /// </summary>
    [JSExport]
    internal static bool Warm(int step)
    {
        if (step >= Sides.Length || !Directory.Exists("/catalog/builds")
            || Directory.GetFiles("/catalog/builds", "*.yaml").Order(StringComparer.Ordinal).FirstOrDefault() is not { } build)
            return false;
        _engine!.Answer(new PageRequest
        {
            Name = "",
            Fields = [KeyValuePair.Create("text", File.ReadAllText(build)), KeyValuePair.Create("side", Sides[step])],
            IsPart = true,
        });
        return true;
    }

    [JSImport("told", "worker")]
    private static partial void Told(string job, string line);

    private sealed class Teller(string job) : IProgress<string>
    {
        public void Report(string value) => Told(job, value);
    }
}
