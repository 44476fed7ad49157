using System.Text;
using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Schemas;
using FitCheck.Yaml;

namespace FitCheck;

/// <summary>Reads build files from disk.</summary>
internal static class BuildFiles
{
    /// <summary>The build in a file; null when it can't be used. Problems say why, each with its place.</summary>
    public static Build? Read(string path, Workshop workshop, Remembered remembered, Lazy<SchemaCheck> schemas, ProblemList problems) =>
        ReadWithRoot(path, workshop, remembered, schemas, problems)?.Build;

    /// <summary>The same, with the document as it is written.</summary>
    public static (Build Build, YamlMap Root)? ReadWithRoot(string path, Workshop workshop, Remembered remembered, Lazy<SchemaCheck> schemas, ProblemList problems)
    {
        var name = path.Replace('\\', '/');
        if (Bytes(path, name, "a build file", problems) is not { } bytes || SourceText.Decode(name, bytes, problems) is not { } source)
            return null;
        var own = new ProblemList();
        var root = YamlReader.Read(source, own);
        Build? build = null;
        if (root is not null)
        {
            var key = Remembered.Key(Encoding.UTF8.GetBytes("build"), bytes);
            if (!remembered.Knows(key))
            {
                var shape = new ProblemList();
                schemas.Value.Check("build", root, shape);
                if (!shape.HasErrors)
                    remembered.Add(key);
                own.AddRange(shape.Sorted());
            }
            build = BuildReader.Read(root, workshop.Catalog, own);
        }
        problems.AddRange(own.Sorted());
        return own.HasErrors || build is null ? null : (build, (YamlMap)root!);
    }

    /// <summary>The text of a file; null when it can't be read.</summary>
    /// <param name="path">The file.</param>
    /// <param name="wanted">What it should be, with its article.</param>
    /// <param name="problems">Where problems go.</param>
    public static SourceText? Source(string path, string wanted, ProblemList problems) =>
        Bytes(path, path.Replace('\\', '/'), wanted, problems) is { } bytes ? SourceText.Decode(path.Replace('\\', '/'), bytes, problems) : null;

    private static byte[]? Bytes(string path, string name, string wanted, ProblemList problems)
    {
        var at = new Location(name, 0, 0);
        try
        {
            if (Directory.Exists(path))
                problems.Error(at, $"this is a folder; name {wanted}", ProblemKind.Unreadable);
            else if (!File.Exists(path))
                problems.Error(at, $"no such file{NearFile(path)}", ProblemKind.Unreadable);
            else if (new FileInfo(path).Length > SourceText.MaxBytes)
                problems.Error(at, $"the file is larger than the {SourceText.MaxBytes} bytes that FitCheck reads", ProblemKind.Unreadable);
            else
                return File.ReadAllBytes(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            problems.Error(at, "the file can't be read", ProblemKind.Unreadable);
        }
        return null;
    }

    private static string NearFile(string path)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path));
        return Directory.Exists(folder) ? Nearest.Hint(Path.GetFileName(path), Directory.GetFiles(folder).Select(f => Path.GetFileName(f))) : "";
    }
}
