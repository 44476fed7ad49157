using System.Text;
using FitCheck.Builds;
using FitCheck.Evaluation;
using FitCheck.Facts;
using FitCheck.Foundation;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Schemas;

namespace FitCheck.Impacts;

/// <summary>One of the two states that are compared: a folder with `catalog/` and mostly `rules/` in it.</summary>
/// <param name="Name">As the caller named it: a folder or a revision.</param>
/// <param name="Root">The folder that holds it.</param>
internal sealed record SideFolder(string Name, string Root)
{
    /// <summary>Its catalog, and its rules or, without any, those of the program.</summary>
    public Folders Folders => new([Below("catalog")], Directory.Exists(Below("rules")) ? [Below("rules")] : Folders.BesideProgram.Rules);

    private string Below(string name) => Root.Replace('\\', '/').TrimEnd('/') + "/" + name;
}

/// <summary>A side that was read: catalog, rules, and every build with its findings.</summary>
internal sealed class InputState
{
    private readonly string _root;

    private InputState(SideFolder folder, ValidInputs valid)
    {
        (_root, Workshop) = (folder.Root.Replace('\\', '/').TrimEnd('/') + "/", valid);
        // A state that is known to be valid leaves out what a check never asks; here all of both sides is compared.
        Rules = RuleSet.Load(folder.Folders.Rules, FactRegistry.Declarations, new ProblemList());
    }

    public ValidInputs Workshop { get; }

    /// <summary>Every rule, those of the catalog too.</summary>
    public RuleSet Rules { get; }

    /// <summary>Builds by their ids: the result, or why there is none, and what is written.</summary>
    public SortedDictionary<string, (BuildResult? Result, Location At,
        IReadOnlyList<Problem> Problems, string Text)> Builds
    { get; } = new(StringComparer.Ordinal);

    /// <summary>Null when its catalog or its rules can't be used; problems say why.</summary>
    public static InputState? Read(SideFolder folder, ValidationCache cache, List<Problem> problems, Action<string>? progress)
    {
        var own = new ProblemList();
        var side = ValidInputs.Open(folder.Folders, cache, own, progress) is { } valid ? new InputState(folder, valid) : null;
        side?.ReadBuilds(folder, cache, own, progress);
        if (side is not null && !own.HasErrors)
            return side;
        var root = folder.Root.Replace('\\', '/').TrimEnd('/') + "/";
        problems.AddRange(own.Sorted().Select(p => p with { At = At(p.At, root), Message = $"{p.Message} ({folder.Name})" }));
        return null;
    }

    /// <summary>A place as it is told, from the side's own root on.</summary>
    public Location Shown(Location at) => At(at, _root);

    private static Location At(Location at, string root) =>
        at.File.StartsWith(root, StringComparison.Ordinal) ? at with { File = at.File[root.Length..] } : at;

    private void ReadBuilds(SideFolder folder, ValidationCache cache, ProblemList told, Action<string>? progress)
    {
        var schemas = new Lazy<SchemaCheck>(() => new SchemaCheck());
        var builds = Path.Combine(folder.Folders.Catalog[0], "builds");
        if (!Directory.Exists(builds))
            return;
        foreach (var path in InputFolder.Files(folder.Folders.Catalog[0], builds, [".yaml"], told).Select(f => f.Path))
        {
            progress?.Invoke($"checking {Path.GetFileName(path)} of {folder.Name}");
            var problems = new ProblemList();
            var build = BuildFiles.Read(path, folder.Folders.Catalog, Workshop.Catalog, cache, schemas, problems)?.Build;
            var text = BuildFiles.PlainBytes(path, folder.Folders.Catalog) is { } bytes ? Encoding.UTF8.GetString(bytes) : "";
            if (build is not null)
                Waivers.Refuse(build, () => Rules, problems);
            if (problems.HasErrors)
                build = null;
            var file = path.Replace('\\', '/');
            Builds[Path.ChangeExtension(file[(builds.Length + 1)..], null)] =
                (build is null ? null : BuildEvaluation.Judged(build, Rules), Shown(build?.At ?? new Location(file, 0, 0)),
                    [.. problems.Sorted().Select(p => p with { At = Shown(p.At) })], text);
        }
    }
}
