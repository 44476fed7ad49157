using FitCheck.Reports.Wording;

namespace FitCheck.Page.Server;

/// <summary>Standard output has the address and nothing else; all that is said goes to standard error.</summary>
internal static class Terminal
{
    /// <summary>True where a person sees what is printed.</summary>
    public static bool IsWatched => !Console.IsOutputRedirected;

    /// <summary>Prints a line.</summary>
    /// <exception cref="CannotServeException">It can't be written: nobody would know the address.</exception>
    public static void Print(string line)
    {
        try
        {
            Console.Out.WriteLine(line);
            Console.Out.Flush();
        }
        catch (IOException)
        {
            throw new CannotServeException("standard output can't be written: the disk refused it");
        }
    }

    /// <summary>Says something; who can't hear it misses nothing.</summary>
    public static void Tell(string line)
    {
        try
        {
            Console.Error.WriteLine(PlainText.Line(line));
        }
        catch (IOException)
        {
            // Standard error is closed or full.
        }
    }
}
