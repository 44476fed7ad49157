using System.Diagnostics;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Xunit;

namespace FitCheck.Tests.House;

/// <summary>Compiles a program that a document shows, as a new console project would, and runs it.</summary>
internal static class ReadmeProgram
{
    // What a new console project has without asking.
    private const string Usings = """
        global using System;
        global using System.Collections.Generic;
        global using System.IO;
        global using System.Linq;
        global using System.Net.Http;
        global using System.Threading;
        global using System.Threading.Tasks;
        """;

    private static readonly string[] Own = ["FitCheck.Core", "FitCheck.Physics", "FitCheck.Reports"];

    public static (int Status, string Output, string Error) Run(string program, string folder)
    {
        var file = Path.Combine(AppContext.BaseDirectory, "readme-program.dll");
        Compile(program, file);
        // Beside the library; with the packages and the framework of these tests.
        var tests = Path.Combine(AppContext.BaseDirectory, "FitCheck.Tests");
        var start = new ProcessStartInfo(Environment.ProcessPath!,
            ["exec", "--depsfile", tests + ".deps.json", "--runtimeconfig", tests + ".runtimeconfig.json", file])
        {
            WorkingDirectory = folder,
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        if (Path.GetFileNameWithoutExtension(start.FileName) != "dotnet")
            start.FileName = "dotnet";
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, error.Result);
    }

    private static void Compile(string program, string file)
    {
        var framework = Path.GetDirectoryName(typeof(object).Assembly.Location)!;
        var known = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
            .Where(a => Path.GetDirectoryName(a) == framework || Own.Contains(Path.GetFileNameWithoutExtension(a)));
        var compilation = CSharpCompilation.Create("readme-program",
            [CSharpSyntaxTree.ParseText(program), CSharpSyntaxTree.ParseText(Usings)],
            known.Select(a => MetadataReference.CreateFromFile(a)),
            new CSharpCompilationOptions(OutputKind.ConsoleApplication, nullableContextOptions: NullableContextOptions.Enable));
        var emitted = compilation.Emit(file);
        Assert.True(emitted.Success && emitted.Diagnostics.All(d => d.Severity < DiagnosticSeverity.Warning),
            string.Join('\n', emitted.Diagnostics));
    }
}
