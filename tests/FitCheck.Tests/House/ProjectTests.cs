using System.Reflection;
using System.Xml.Linq;
using FitCheck.Findings;
using FitCheck.Physics.Geometry;
using Xunit;

namespace FitCheck.Tests.House;

public class ProjectTests
{
    // Each may use those before it.
    private static readonly string[] Order = ["FitCheck.Physics", "FitCheck", "FitCheck.Reports", "FitCheck.Page", "FitCheck.Page.Packing",
        "FitCheck.Page.Static", "FitCheck.Page.Server", "FitCheck.Cli", "FitCheck.Native", "FitCheck.Package"];

    [Fact]
    public void Projects_use_only_those_before_them()
    {
        var offenders =
            from project in Directory.EnumerateFiles(RepositoryRoot.Of("src"), "*.csproj", SearchOption.AllDirectories)
            let name = Path.GetFileNameWithoutExtension(project)
            from used in Items(project, "ProjectReference").Select(path => Path.GetFileNameWithoutExtension(path.Replace('\\', '/')))
            where !Order.Contains(name) || !Order.TakeWhile(n => n != name).Contains(used)
            select $"{name} uses {used}";

        Assert.Empty(offenders);
    }

    [Fact]
    public void The_physics_stands_on_the_framework_alone()
    {
        var packages = Items(RepositoryRoot.Of("src", "FitCheck.Physics", "FitCheck.Physics.csproj"), "PackageReference");
        var assemblies = Used(typeof(BodyProfile).Assembly).Where(name => !name.StartsWith("System.", StringComparison.Ordinal));

        Assert.Empty(packages.Concat(assemblies));
    }

    [Fact]
    public void Only_the_program_talks_to_the_console()
    {
        var reports = Assembly.Load("FitCheck.Reports");

        var offenders = new[] { typeof(BodyProfile).Assembly, typeof(Finding).Assembly, reports }
            .Where(a => Used(a).Contains("System.Console")).Select(a => a.GetName().Name);

        Assert.Empty(offenders);
    }

    [Fact]
    public void Who_packs_the_repository_packs_the_program_alone()
    {
        var packed =
            from line in File.ReadAllLines(RepositoryRoot.Of("FitCheck.sln"))
            let project = line.Split('"').FirstOrDefault(w => w.EndsWith(".csproj", StringComparison.Ordinal))?.Replace('\\', '/')
            where project is not null
                && XDocument.Load(RepositoryRoot.Of(project.Split('/'))).Descendants("IsPackable").Any(p => p.Value == "true")
            select Path.GetFileNameWithoutExtension(project);

        Assert.Equal(["FitCheck.Cli"], packed);
        Assert.Equal("false", XDocument.Load(RepositoryRoot.Of("Directory.Build.props")).Descendants("IsPackable").Single().Value);
    }

    [Fact]
    public void The_package_needs_what_its_assemblies_need()
    {
        var library = new[] { RepositoryRoot.Of("src", "FitCheck.Physics", "FitCheck.Physics.csproj"),
            RepositoryRoot.Of("src", "FitCheck", "FitCheck.csproj"),
            RepositoryRoot.Of("src", "FitCheck.Reports", "FitCheck.Reports.csproj") };

        Assert.Equal(library.SelectMany(p => Items(p, "PackageReference")).Distinct().Order(StringComparer.Ordinal),
            Items(RepositoryRoot.Of("src", "FitCheck.Reports", "Package", "FitCheck.Package.csproj"), "PackageReference")
                .Order(StringComparer.Ordinal));
    }

    // Without one of them the quick program is not compiled, and every check starts as slowly as a first one.
    [Fact]
    public void The_quick_program_is_made_of_every_room_of_the_commands()
    {
        var cli = RepositoryRoot.Of("src", "FitCheck.Cli");
        var compiled = Items(Path.Combine(cli, "Native", "FitCheck.Native.csproj"), "Compile").SelectMany(i => i.Split(';'));
        var rooms = Directory.EnumerateDirectories(cli).Where(d => Path.GetFileName(d) is not ("bin" or "obj"))
            .Where(d => Directory.EnumerateFiles(d, "*.cs").Any()).Select(d => $"../{Path.GetFileName(d)}/*.cs");

        Assert.Empty(rooms.Except(compiled, StringComparer.Ordinal));
    }

    private static IEnumerable<string> Items(string project, string kind) =>
        XDocument.Load(project).Descendants(kind).Select(item => (string)item.Attribute("Include")!);

    private static IEnumerable<string> Used(Assembly assembly) => assembly.GetReferencedAssemblies().Select(a => a.Name!);
}
