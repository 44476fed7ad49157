using System.Runtime.CompilerServices;
using Xunit.Sdk;

namespace FitCheck.Tests.Reports;

/// <summary>Compares with NAME.verified.EXT beside the calling test; a missing file fails and leaves NAME.received.EXT to be looked at and renamed.</summary>
internal static class SnapshotForReports
{
    public static void Verify(string actual, string name, string extension, [CallerFilePath] string caller = "")
    {
        var stem = Path.Combine(Path.GetDirectoryName(caller)!, name);
        var verified = $"{stem}.verified.{extension}";
        var received = $"{stem}.received.{extension}";
        if (File.Exists(verified) && File.ReadAllText(verified) == actual)
        {
            File.Delete(received);
            return;
        }
        File.WriteAllText(received, actual);
        throw new XunitException(File.Exists(verified) ? FirstDifference(File.ReadAllText(verified), actual, received) : $"No snapshot yet: look at {received} and rename it.");
    }

    private static string FirstDifference(string expected, string actual, string received)
    {
        string[] old = expected.Split('\n'), now = actual.Split('\n');
        var line = 0;
        while (line < Math.Min(old.Length, now.Length) && old[line] == now[line])
            line++;
        return $"Line {line + 1} differs from the snapshot.\n- {old.ElementAtOrDefault(line)}\n+ {now.ElementAtOrDefault(line)}\nAll of it: {received}";
    }
}
