namespace FitCheck.Page.Server;

/// <summary>Opens what the page stands on, listens, says where, and goes on until somebody ends it.</summary>
internal static class Program
{
    private const int Good = 0, BadInput = 2, Defect = 70;

    public static async Task<int> Main(string[] args)
    {
        try
        {
            return await Run(ServerArguments.Read(args));
        }
        catch (CannotServeException e)
        {
            Terminal.Tell("fitcheck: " + e.Message);
            return BadInput;
        }
        catch (Exception e)
        {
            var place = e.StackTrace?.Split('\n') is [var first, ..] ? first.Trim() : "an unknown place";
            Terminal.Tell($"fitcheck: a defect of FitCheck, not of your input: {e.GetType().Name} {place}. Please report this "
                + "line with the command that you ran.");
            return Defect;
        }
    }

    private static async Task<int> Run(ServerArguments arguments)
    {
        // The page's work keeps threads busy; answers, and the news of a browser that went, must not wait for them.
        ThreadPool.SetMinThreads(Math.Max(16, 4 * Environment.ProcessorCount), 4);
        using var end = new Ending(arguments.Parent);
        var opening = Task.Run(() => OpenedPage.Open(arguments, end.Asked));
        await using var server = new PageServer(opening, end.Asked);
        var port = await server.Listen(arguments.Port);
        if (await Opened(opening, end.Asked) is not { } opened)
            return Good;
        using var _ = opened;
        Terminal.Print(Keys.Address(port, server.Keys.Token));
        Terminal.Tell("The page is at this address, for whoever has it whole. Ctrl-C ends it.");
        if (arguments.Opens && Terminal.IsWatched)
            Browser.Open(Keys.Address(port, server.Keys.Ticket()));
        await end.Waited;
        return Good;
    }

    // Null where somebody ended it before.
    private static async Task<OpenedPage?> Opened(Task<OpenedPage> opening, CancellationToken end)
    {
        try
        {
            return await opening;
        }
        catch (OperationCanceledException) when (end.IsCancellationRequested)
        {
            return null;
        }
    }
}
