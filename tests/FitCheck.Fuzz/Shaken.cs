using System.Diagnostics;

namespace FitCheck.Fuzz;

/// <summary>
/// Tries documents shaken at random, without a fuzzer: a thousand times faster than one that looks where each input goes, so both have
/// their use.
/// </summary>
internal sealed class Shaken(IReadOnlyList<byte[]> documents, int seed)
{
    private static readonly TimeSpan Hang = TimeSpan.FromSeconds(10);

    private readonly Shaker _shaker = new(documents, seed);

    /// <summary>Tries so many; what fails is written to a file, and its name told.</summary>
    public int Run(Action<byte[]> target, long count)
    {
        var input = Array.Empty<byte>();
        var watch = Stopwatch.StartNew();
        var begun = 0L;
        using var alarm = new Timer(_ =>
        {
            if (watch.ElapsedMilliseconds - Volatile.Read(ref begun) > Hang.TotalMilliseconds)
                Environment.Exit(Failed(input, $"takes longer than {Hang.TotalSeconds:0} s"));
        }, null, Hang, Hang);
        for (var i = 0L; i < count; i++)
        {
            input = _shaker.Next();
            Volatile.Write(ref begun, watch.ElapsedMilliseconds);
            try
            {
                target(input);
            }
            catch (Exception e)
            {
                return Failed(input, e.ToString());
            }
        }
        Console.WriteLine($"{count} documents, none failed; {count / watch.Elapsed.TotalSeconds:0} a second");
        return 0;
    }

    private static int Failed(byte[] input, string why)
    {
        var file = Path.Combine(Path.GetTempPath(), $"fitcheck-shaken-{Guid.NewGuid():N}");
        File.WriteAllBytes(file, input);
        Console.Error.WriteLine($"{file}: {why}");
        return 1;
    }
}
