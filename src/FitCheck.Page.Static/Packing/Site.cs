using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;

namespace FitCheck.Page.Static.Packing;

/// <summary>The folder as a web space serves it.</summary>
internal sealed class Site(string folder)
{
    private static readonly string[] Compressed = [".br", ".gz"];

    /// <summary>
    /// True where the published library is, byte for byte, the one that runs here: what this one found valid is not validated again there.
    /// </summary>
    public static bool IsOfThisLibrary(string published) =>
        Directory.GetFiles(Path.Combine(published, "_framework"), "FitCheck.Core.*.wasm") is [var library]
        && File.ReadAllBytes(library).AsSpan().IndexOf(typeof(Checker).Module.ModuleVersionId.ToByteArray()) >= 0;

    /// <summary>Brings what was published to its place, and adds what only the engine knows.</summary>
    public void Lay(string published, PageEngine engine, Data data)
    {
        Bring(published);
        foreach (var asset in engine.Assets)
            Write(asset.Name, Encoding.UTF8.GetBytes(asset.Text));
        Write("index.html", Encoding.UTF8.GetBytes(FirstPage.Of(engine)));
        Write("fitcheck.data", data.Packed(), compress: false);
        var names = Names();
        // The worker between page and network is another one as soon as a byte of any file is.
        var files = string.Join(", ", names.Select(n => $"'{(n == "index.html" ? "./" : n)}'"));
        Write("sw.js", Encoding.UTF8.GetBytes(File.ReadAllText(In("sw.js"))
            .Replace("'VERSION'", $"'{Version(names)}'", StringComparison.Ordinal)
            .Replace("'FILES'", $"[{files}]", StringComparison.Ordinal)));
    }

    // Names tell the version there: nothing of an earlier publish stays.
    private void Bring(string published)
    {
        if (Directory.Exists(In("_framework")))
            Directory.Delete(In("_framework"), recursive: true);
        Directory.CreateDirectory(In("_framework"));
        foreach (var file in Directory.GetFiles(published, "*", SearchOption.AllDirectories))
            File.Copy(file, In(Path.GetRelativePath(published, file)), overwrite: true);
    }

    private List<string> Names() =>
        [.. from file in Directory.GetFiles(folder).Concat(Directory.GetFiles(In("_framework")))
            let name = Path.GetRelativePath(folder, file).Replace('\\', '/')
            where name != "sw.js" && !Compressed.Contains(Path.GetExtension(name), StringComparer.Ordinal)
            orderby name
            select name];

    private string Version(IEnumerable<string> names)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var name in names)
        {
            hash.AppendData(Encoding.UTF8.GetBytes(name));
            hash.AppendData(SHA256.HashData(File.ReadAllBytes(In(name))));
        }
        return Convert.ToHexStringLower(hash.GetHashAndReset())[..16];
    }

    private void Write(string name, byte[] bytes, bool compress = true)
    {
        File.WriteAllBytes(In(name), bytes);
        if (!compress)
            return;
        using (var brotli = new BrotliStream(File.Create(In(name + ".br")), CompressionLevel.SmallestSize))
            brotli.Write(bytes);
        using var gzip = new GZipStream(File.Create(In(name + ".gz")), CompressionLevel.SmallestSize);
        gzip.Write(bytes);
    }

    private string In(string name) => Path.Combine(folder, name);
}
