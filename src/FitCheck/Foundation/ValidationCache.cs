using System.Text;
using FitCheck.Foundation.Files;

namespace FitCheck.Foundation;

/// <summary>
/// Remembers which inputs were found valid, by digest, so that an unchanged catalog need not be validated again. It holds no data: at worst
/// (a torn, foreign or missing file) the validation runs once more. Any change of an input, a schema or the program changes the digest.
/// </summary>
public sealed class ValidationCache
{
    private const int MostNotes = 256;
    private readonly string? _folder;

    private ValidationCache(string? folder) => _folder = folder;

    /// <summary>In FITCHECK_CACHE, else the user's cache folder; a folder that can't be written is as good as none.</summary>
    public static ValidationCache InUserFolder()
    {
        var folder = Environment.GetEnvironmentVariable("FITCHECK_CACHE");
        if (string.IsNullOrEmpty(folder))
        {
            var user = Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData,
                Environment.SpecialFolderOption.DoNotVerify);
            folder = user.Length == 0 ? null : Path.Combine(user, "fitcheck");
        }
        return new ValidationCache(folder);
    }

    /// <summary>A file in the folder that holds more than a note of a few words; null without a folder.</summary>
    public string? FileFor(string name) => _folder is null ? null : Path.Combine(_folder, name);

    /// <summary>In this folder.</summary>
    public static ValidationCache In(string folder) => new(folder);

    /// <summary>Remembers nothing.</summary>
    public static ValidationCache Nothing { get; } = new(null);

    /// <summary>
    /// The digest of parts that together were, or were not, found valid; this program and its schemas are always among them.
    /// </summary>
    public static string Key(params IEnumerable<byte[]> parts)
    {
        var hash = new Sha256();
        hash.Append(typeof(ValidationCache).Module.ModuleVersionId.ToByteArray());
        foreach (var part in parts)
        {
            hash.Append(BitConverter.GetBytes(part.Length));
            hash.Append(part);
        }
        return hash.Finish();
    }

    /// <summary>True when the inputs of this digest were found valid before.</summary>
    public bool Knows(string key)
    {
        if (_folder is null)
            return false;
        try
        {
            return File.ReadAllText(PathOf(_folder, key)) == Note(key);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    /// <summary>Remembers that the inputs of this digest are valid; a folder that can't be written is passed over.</summary>
    public void Add(string key)
    {
        if (_folder is null)
            return;
        try
        {
            Directory.CreateDirectory(_folder);
            Forget(_folder);
            AtomicFile.Write(PathOf(_folder, key), Encoding.UTF8.GetBytes(Note(key)));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Not remembered: the next run validates again.
        }
    }

    private static void Forget(string folder)
    {
        var notes = Directory.GetFiles(folder);
        if (notes.Length < MostNotes)
            return;
        foreach (var old in notes.OrderBy(File.GetLastWriteTimeUtc).Take(notes.Length - (MostNotes / 2)))
            File.Delete(old);
    }

    private static string PathOf(string folder, string key) => Path.Combine(folder, key + ".valid");

    private static string Note(string key) => $"FitCheck found the inputs with this digest valid.\n{key}\n";
}
