namespace FitCheck.Page.Static;

/// <summary>Nothing runs by itself: the worker's script calls <see cref="Engine"/>.</summary>
internal static class Program
{
    private static void Main()
    {
    }
}
