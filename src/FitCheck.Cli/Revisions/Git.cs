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
    public static bool Into(Stream output, string folder, params string[] arguments) => Ask(folder, arguments, [], printed =>
    {
        printed.CopyTo(output);
        return true;
    });

    /// <summary>Hands over lines to its standard input and what it prints to a reader; false when it or the reader fails.</summary>
    public static bool Ask(string folder, string[] arguments, IEnumerable<string> lines, Func<Stream, bool> read)
    {
        var start = new ProcessStartInfo("git", ["-C", folder, .. arguments])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false
        };
        try
        {
            using var process = Process.Start(start)!;
            try
            {
                var (error, told) = (process.StandardError.ReadToEndAsync(), Task.Run(() => Tell(process.StandardInput, lines)));
                using var printed = new BufferedStream(process.StandardOutput.BaseStream, 1 << 16);
                if (!read(printed))
                    return false;
                told.Wait();
                process.WaitForExit();
                _ = error.Result;
                return process.ExitCode == 0;
            }
            finally
            {
                if (!process.HasExited)
                    process.Kill();
            }
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }

    private static void Tell(StreamWriter input, IEnumerable<string> lines)
    {
        try
        {
            using (input)
            {
                foreach (var line in lines)
                    input.Write(line + "\n");
            }
        }
        catch (IOException)
        {
            // It has ended; what it has printed, or has not, tells.
        }
    }
}
