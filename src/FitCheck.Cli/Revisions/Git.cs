using System.Diagnostics;

namespace FitCheck.Cli.Revisions;

/// <summary>Asks the `git` on the path; nothing else of FitCheck knows of it.</summary>
internal static class Git
{
    /// <summary>The first line of what it prints; null when it fails or isn't there.</summary>
    public static string? Line(string folder, params string[] arguments)
    {
        using var output = new MemoryStream();
        if (!Into(output, folder, arguments))
            return null;
        var text = System.Text.Encoding.UTF8.GetString(output.ToArray());
        return text.Split('\n')[0].TrimEnd('\r');
    }

    /// <summary>Copies what it prints; false when it fails or isn't there.</summary>
    public static bool Into(Stream output, string folder, params string[] arguments)
    {
        var start = new ProcessStartInfo("git", ["-C", folder, .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false
        };
        try
        {
            using var process = Process.Start(start)!;
            var error = process.StandardError.ReadToEndAsync();
            process.StandardOutput.BaseStream.CopyTo(output);
            process.WaitForExit();
            _ = error.Result;
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}
