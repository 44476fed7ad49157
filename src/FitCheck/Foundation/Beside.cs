namespace FitCheck.Foundation;

/// <summary>
/// Work that goes on beside what asks for it. In a browser, which has one thread, it is done at once: nobody could wait for it.
/// </summary>
internal static class Beside
{
    /// <summary>Begins.</summary>
    public static Task<T> Run<T>(Func<T> work) => OperatingSystem.IsBrowser() ? Task.FromResult(work()) : Task.Run(work);

    /// <summary>Goes on when the first is done.</summary>
    public static Task<TNext> Then<T, TNext>(Task<T> first, Func<T, TNext> next) =>
        OperatingSystem.IsBrowser() ? Task.FromResult(next(first.Result))
        : first.ContinueWith(f => next(f.Result), CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);
}
