using System.Runtime.InteropServices;

namespace FitCheck.Cli.Revisions;

/// <summary>Folders that are gone when the run ends, also where it is interrupted.</summary>
internal sealed class TemporaryFolders : IDisposable
{
    private static readonly PosixSignal[] Ends = [PosixSignal.SIGINT, PosixSignal.SIGTERM, PosixSignal.SIGHUP, PosixSignal.SIGQUIT];

    private readonly object _gate = new();
    private readonly List<string> _folders = [];
    private readonly List<PosixSignalRegistration> _signals = [];

    /// <summary>A new one.</summary>
    public string New()
    {
        if (_signals.Count == 0)
            _signals.AddRange(Ends.Select(s => PosixSignalRegistration.Create(s, _ => End())));
        lock (_gate)
        {
            _folders.Add(Directory.CreateTempSubdirectory("fitcheck-revision-").FullName);
            return _folders[^1];
        }
    }

    /// <summary>Does what writes there; never beside the end of the run, which would leave something behind.</summary>
    public void Write(Action action)
    {
        lock (_gate)
            action();
    }

    public void Dispose()
    {
        lock (_gate)
            Delete();
        foreach (var signal in _signals)
            signal.Dispose();
    }

    // The gate stays shut: what comes next is the end that the signal asks for.
    private void End()
    {
        Monitor.Enter(_gate);
        Delete();
    }

    private void Delete()
    {
        foreach (var folder in _folders.Where(Directory.Exists))
            Directory.Delete(folder, recursive: true);
        _folders.Clear();
    }
}
