using System.Globalization;
using System.Runtime.InteropServices;
using FitCheck.Fuzz;
using SharpFuzz;

// fuzz TARGET            reads inputs from the fuzzer, one after the other
// fuzz TARGET FILE...    tries these inputs, to see again what the fuzzer found
// fuzz TARGET --shaken COUNT SEED FILE...   without the fuzzer: COUNT documents made from these by shaking them at random
// What runs before the fuzzer listens is counted in memory that nobody reads.
unsafe
{
    SharpFuzz.Common.Trace.SharedMem = (byte*)NativeMemory.AllocZeroed(1 << 16);
}
var targets = new Targets();
if (args.Length == 0 || targets.Find(args[0]) is not { } target)
{
    Console.Error.WriteLine($"expected one of {string.Join(", ", Targets.Names)}");
    return 3;
}
if (args.Length > 4 && args[1] == "--shaken" && long.TryParse(args[2], NumberStyles.None, CultureInfo.InvariantCulture, out var count)
    && int.TryParse(args[3], NumberStyles.None, CultureInfo.InvariantCulture, out var seed))
    return new Shaken([.. args[4..].Select(File.ReadAllBytes)], seed).Run(target, count);
if (args.Length > 1)
{
    foreach (var file in args[1..])
        target(File.ReadAllBytes(file));
    return 0;
}
Fuzzer.Run(stream =>
{
    using var bytes = new MemoryStream();
    stream.CopyTo(bytes);
    target(bytes.ToArray());
});
return 0;
