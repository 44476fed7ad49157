using System.Text;
using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Foundation;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Schemas;
using FitCheck.Yaml;

namespace FitCheck.Evaluation;

/// <summary>A build, and the document as it is written.</summary>
internal sealed record BuildFile(Build Build, YamlMap Root, string Text);

/// <summary>Reads builds from disk or from memory.</summary>
internal static class BuildFiles
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>
    /// Reads builds with catalog and rules that are open; null when anything is wrong with any of them, all of which problems tell.
    /// </summary>
    public static IReadOnlyList<BuildFile>? Read(IReadOnlyList<BuildSource> sources, ValidInputs valid, IReadOnlyList<string> folders,
        ValidationCache cache, Lazy<SchemaCheck> schemas, ProblemList problems, DateOnly? today, CancellationToken cancel)
    {
        var builds = new List<BuildFile>();
        foreach (var source in sources)
        {
            cancel.ThrowIfCancellationRequested();
            if (Read(source, folders, valid.Catalog, cache, schemas, problems, today) is { } build)
                builds.Add(build);
        }
        foreach (var build in builds)
            Waivers.Refuse(build.Build, () => valid.Rules, problems);
        return problems.HasErrors ? null : builds;
    }

    /// <summary>
    /// Reads very many builds, one at a time, and keeps their bytes alone: what was sound is read from them again whenever it is asked for.
    /// Null when anything is wrong with any of them, all of which problems tell.
    /// </summary>
    public static IReadOnlyList<Func<Build>>? InTurn(IReadOnlyList<BuildSource> sources, ValidInputs valid, IReadOnlyList<string> folders,
        ValidationCache cache, Lazy<SchemaCheck> schemas, ProblemList problems, DateOnly? today, IProgress<string>? progress,
        CancellationToken cancel)
    {
        var builds = new List<Func<Build>>(sources.Count);
        var waivers = new ProblemList();
        foreach (var source in sources)
        {
            cancel.ThrowIfCancellationRequested();
            progress?.Report($"reading {source.Name}");
            if ((source.Path is { } path ? Bytes(path, source.Name, "a build file", Fences(folders), problems) : Bytes(source, problems))
                    is not { } bytes
                || Read(source.Name, bytes, valid.Catalog, source.Path is null ? ValidationCache.Nothing : cache, schemas, problems, today)
                    is not { } read)
                continue;
            Waivers.Refuse(read.Build, () => valid.Rules, waivers);
            // What was to be said of it is said.
            builds.Add(() => BuildReader.Read(YamlReader.Read(SourceText.Decode(source.Name, bytes, new ProblemList())!,
                new ProblemList())!, valid.Catalog, new ProblemList(), today)!);
        }
        problems.AddRange(waivers.Sorted());
        return problems.HasErrors ? null : builds;
    }

    /// <summary>The build in a file; null when it can't be used. Problems say why, each with its place.</summary>
    /// <param name="path">The file.</param>
    /// <param name="folders">Those of the catalog: a link in one of them must not lead out of it.</param>
    /// <param name="catalog">What is in them.</param>
    /// <param name="cache">Builds whose form is known to be right.</param>
    /// <param name="schemas">What their form has to be.</param>
    /// <param name="problems">Where problems go.</param>
    /// <param name="today">The day by which the end of a waiver is judged; null for today, UTC.</param>
    public static BuildFile? Read(string path, IReadOnlyList<string> folders, PartsCatalog catalog, ValidationCache cache,
        Lazy<SchemaCheck> schemas, ProblemList problems, DateOnly? today = null)
    {
        var name = path.Replace('\\', '/');
        return Bytes(path, name, "a build file", Fences(folders), problems) is { } bytes
            ? Read(name, bytes, catalog, cache, schemas, problems, today) : null;
    }

    /// <summary>
    /// The build in a file or a text; null when it can't be used. Whether the form of a text is right is not remembered: it may be half
    /// typed.
    /// </summary>
    public static BuildFile? Read(BuildSource source, IReadOnlyList<string> folders, PartsCatalog catalog, ValidationCache cache,
        Lazy<SchemaCheck> schemas, ProblemList problems, DateOnly? today = null) =>
        source.Path is { } path ? Read(path, folders, catalog, cache, schemas, problems, today)
        : Bytes(source, problems) is { } bytes
            ? Read(source.Name, bytes, catalog, ValidationCache.Nothing, schemas, problems, today) : null;

    /// <summary>
    /// The build in a file or a text that somebody has only begun: keys that a whole one must have may be missing, as long as it names its
    /// vehicle. Null when it can't be used.
    /// </summary>
    public static BuildFile? ReadDraft(BuildSource source, IReadOnlyList<string> folders, PartsCatalog catalog, Lazy<SchemaCheck> schemas,
        ProblemList problems, DateOnly? today = null) =>
        (source.Path is { } path ? Bytes(path, source.Name, "a build file", Fences(folders), problems)
            : Bytes(source, problems)) is { } bytes
            ? Read(source.Name, bytes, catalog, ValidationCache.Nothing, schemas, problems, today, isDraft: true) : null;

    private static BuildFile? Read(string name, byte[] bytes, PartsCatalog catalog, ValidationCache cache, Lazy<SchemaCheck> schemas,
        ProblemList problems, DateOnly? today, bool isDraft = false)
    {
        if (SourceText.Decode(name, bytes, problems) is not { } source)
            return null;
        var own = new ProblemList();
        var root = YamlReader.Read(source, own);
        Build? build = null;
        if (root is YamlMap { } map && map["kind"] is YamlScalar { Text: not "build" } kind && Kinds.All.Any(k => k.Kind == kind.Text))
            own.Error(kind.At,
                $"this is {PartsCatalog.Article(kind.Text)}, expected a build; parts and vehicles are looked at by `fitcheck lint "
                    + $"--catalog FOLDER`", ProblemKind.WrongShape);
        else if (root is not null)
        {
            var key = ValidationCache.Key(Encoding.UTF8.GetBytes("build"), bytes);
            if (!cache.Knows(key))
            {
                var shape = new ProblemList();
                schemas.Value.Check("build", isDraft && root is YamlMap begun ? Builds.Draft.Completed(begun) : root, shape);
                if (!shape.HasErrors)
                    cache.Add(key);
                own.AddRange(shape.Sorted());
            }
            build = BuildReader.Read(root, catalog, own, today);
        }
        problems.AddRange(own.Sorted());
        return own.HasErrors || build is null ? null : new BuildFile(build, (YamlMap)root!, source.Text);
    }

    /// <summary>What is in a file or a text that was handed over, of whatever form; null when it can't be read.</summary>
    public static byte[]? AnyBytes(BuildSource source, string wanted, ProblemList problems) =>
        source.Path is { } path ? Bytes(path, source.Name, wanted, [], problems) : Bytes(source, problems);

    // As a file's bytes, so that both are read, and refused, in one way.
    private static byte[]? Bytes(BuildSource source, ProblemList problems)
    {
        if (source.Held is { } held)
            return held;
        try
        {
            return Strict.GetBytes(source.Yaml!);
        }
        catch (EncoderFallbackException)
        {
            problems.Error(new Location(source.Name, 0, 0),
                "the text has half a character (a surrogate without the other), so it is no Unicode text", ProblemKind.Unreadable);
            return null;
        }
    }

    /// <summary>What is in a file that may be read again; null for any other, of which nothing is told.</summary>
    public static byte[]? PlainBytes(string path, IReadOnlyList<string> folders) =>
        !Foundation.Files.FileStamp.IsOther(path) && File.Exists(path) && InputFolder.LeftBy(path, Fences(folders)) is null
            ? InputFile.Bytes(path, path, new ProblemList()) : null;

    // A shell that is asked for all builds of a change names its links too; a folder may itself be named through a link.
    private static IReadOnlyList<string> Fences(IReadOnlyList<string> folders) => [.. folders, "."];

    private static byte[]? Bytes(string path, string name, string wanted, IReadOnlyList<string> fences, ProblemList problems)
    {
        var at = new Location(name, 0, 0);
        if (path.Contains('\0', StringComparison.Ordinal))
            problems.Error(at, "no file has a name with a NUL character in it", ProblemKind.Unreadable);
        else if (Directory.Exists(path))
            problems.Error(at, $"this is a folder; name {wanted}", ProblemKind.Unreadable);
        else if (!File.Exists(path))
            problems.Error(at, $"no such file{NearFile(path)}", ProblemKind.Unreadable);
        else if (InputFolder.LeftBy(path, fences) is { } left)
            problems.Error(at with { Line = 1, Column = 1 }, InputFolder.LeadsOut(left), ProblemKind.Unreadable);
        else if (FileLook.Of(path) is { Type: not FileType.Plain } look && !(look.Type == FileType.Pipe && IsHandedOver(path)))
            problems.Error(at with { Line = 1, Column = 1 }, $"this is no plain file, so it is not read; name {wanted}",
                ProblemKind.Unreadable);
        else
            return InputFile.Bytes(path, name, problems);
        return null;
    }

    // What a shell writes for a pipe that somebody fills: `cmd | fitcheck check /dev/stdin`, `fitcheck check <(cmd)`.
    private static bool IsHandedOver(string path) =>
        path == "/dev/stdin" || path.StartsWith("/dev/fd/", StringComparison.Ordinal)
            || path.StartsWith("/proc/self/fd/", StringComparison.Ordinal);

    private static string NearFile(string path)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path));
        return Directory.Exists(folder) ? Nearest.Hint(Path.GetFileName(path), Directory.GetFiles(folder).Select(f => Path.GetFileName(f)))
            : "";
    }
}
