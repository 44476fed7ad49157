using System.Diagnostics;
using System.Globalization;
using System.Numerics;

namespace FitCheck.Tests.Physics.Electrical;

/// <summary>Runs a netlist through ngspice, a circuit simulator that shares nothing with this project.</summary>
internal static class Ngspice
{
    private const string Missing = "ngspice is not installed. Run tests/run.sh, which fetches what the tests need.";

    // A driver by Thiele and Small, a coaxial one, and wire, written out in parts.
    private const string Library = """
        .subckt driver p n re=4 le=1u fs=100 qms=3 qes=1
        Rdc p a {re}
        Lvc a b {le}
        Rmot b n {re*qms/qes}
        Lmot b n {re/(2*3.14159265358979*fs*qes)}
        Cmot b n {qes/(2*3.14159265358979*fs*re)}
        .ends
        """;

    /// <summary>
    /// Frequency, input impedance and transfer to the probe between 20 Hz and 20 kHz, 40 points to the decade.
    /// The circuit hangs between node `in` and 0; the probe is an expression such as `v(t)`.
    /// </summary>
    public static IReadOnlyList<(double Hz, Complex Impedance, Complex Transfer)> Run(string circuit, string probe)
    {
        var folder = Directory.CreateTempSubdirectory("fitcheck-ngspice-");
        try
        {
            File.WriteAllText(Path.Combine(folder.FullName, "circuit.cir"), $"""
                channel
                {Library}
                Vin in 0 AC 1
                {circuit}
                .control
                set wr_singlescale
                set numdgt=12
                ac dec 40 20 20k
                let z = v(in)/(-i(Vin))
                let h = {probe}
                wrdata answer.data z h
                .endc
                .end
                """);
            var log = Execute(folder.FullName);
            var answer = Path.Combine(folder.FullName, "answer.data");
            if (!File.Exists(answer))
                throw new InvalidOperationException($"ngspice gave no answer:\n{log}");
            return [.. File.ReadLines(answer).Select(Row)];
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static string Execute(string folder)
    {
        var start = new ProcessStartInfo("ngspice", ["-b", "circuit.cir"])
        {
            WorkingDirectory = folder,
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        Process process;
        try
        {
            process = Process.Start(start)!;
        }
        catch (System.ComponentModel.Win32Exception e)
        {
            throw new InvalidOperationException(Missing, e);
        }

        using (process)
        {
            var errors = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return output + errors.Result;
        }
    }

    private static (double Hz, Complex Impedance, Complex Transfer) Row(string line)
    {
        var n = line.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(x => double.Parse(x, CultureInfo.InvariantCulture)).ToArray();
        return (n[0], new Complex(n[1], n[2]), new Complex(n[3], n[4]));
    }
}
