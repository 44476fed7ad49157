namespace FitCheck.Tests;

/// <summary>A folder of its own for one test, gone afterwards.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("fitcheck-").FullName;

    public string Of(string name) => System.IO.Path.Combine(Path, name);

    public string Write(string name, string text)
    {
        var path = Of(name);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return path;
    }

    public string WriteBytes(string name, byte[] bytes)
    {
        var path = Of(name);
        File.WriteAllBytes(path, bytes);
        return path;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
