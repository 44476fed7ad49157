using System.Runtime.InteropServices;
using FitCheck.Foundation.Files;

namespace FitCheck.Cli.Revisions;

/// <summary>Folders that are gone when the run ends, also where it is interrupted.</summary>
internal sealed class TemporaryFolders : IDisposable
{
    private const string Prefix = "fitcheck-revision-";

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
            _folders.Add(Directory.CreateTempSubdirectory(PassingName.Of(Prefix)).FullName);
            if (_folders.Count == 1)
                Sweep(_folders[0]);
            return _folders[^1];
        }
    }

    // What runs left that were killed outright. Where others may make folders too, theirs are left alone: they could change what stands in
    // them while it is deleted.
    private static void Sweep(string own)
    {
        try
        {
            foreach (var folder in Directory.EnumerateDirectories(Path.GetTempPath(), Prefix + "*"))
            {
                if (PassingName.IsLeft(Path.GetFileName(folder), Prefix)
                    && FileLook.Of(folder, followed: false) is { Type: FileType.Folder } look && look.Owner == FileLook.Of(own)?.Owner)
                    Directory.Delete(folder, recursive: true);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Another run was quicker.
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
