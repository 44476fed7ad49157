using System.Diagnostics;
using System.Runtime.InteropServices;

namespace FitCheck.Page.Server;

/// <summary>Waits for whoever ends the page: Ctrl-C, the system, a terminal that is closed, or the command whose child this is.</summary>
internal sealed class Ending : IDisposable
{
    private readonly CancellationTokenSource _asked = new();
    private readonly TaskCompletionSource _waited = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly PosixSignalRegistration[] _signals;
    private readonly Process? _parent;

    public Ending(int? parent)
    {
        _signals = [.. new[] { PosixSignal.SIGINT, PosixSignal.SIGTERM, PosixSignal.SIGHUP }
            .Select(s => PosixSignalRegistration.Create(s, Heard))];
        if (parent is { } id)
            _parent = Watched(id);
    }

    /// <summary>Cancelled when it is to end; all work of the page ends with it.</summary>
    public CancellationToken Asked => _asked.Token;

    /// <summary>Done then.</summary>
    public Task Waited => _waited.Task;

    public void Dispose()
    {
        foreach (var signal in _signals)
            signal.Dispose();
        _parent?.Dispose();
        _asked.Dispose();
    }

    // A second one ends it as the system does.
    private void Heard(PosixSignalContext signal)
    {
        signal.Cancel = !_asked.IsCancellationRequested;
        End();
    }

    private void End()
    {
        _waited.TrySetResult();
        try
        {
            _asked.Cancel();
        }
        catch (ObjectDisposedException)
        {
            // It has ended.
        }
    }

    private Process? Watched(int id)
    {
        try
        {
            var parent = Process.GetProcessById(id);
            parent.EnableRaisingEvents = true;
            parent.Exited += (_, _) => End();
            return parent;
        }
        catch (ArgumentException)
        {
            // Gone already.
            End();
            return null;
        }
    }
}
