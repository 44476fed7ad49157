namespace FitCheck.Benchmarks;

/// <summary>A command line that makes no sense.</summary>
internal static class Wrong
{
    public static int Usage(string what)
    {
        Console.Error.WriteLine(what);
        return 3;
    }
}
