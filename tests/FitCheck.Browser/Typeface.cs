using Xunit;

namespace FitCheck.Browser;

/// <summary>
/// A family of fonts, to be tried as on a machine that has no other: how wide letters are decides how many pages a report takes.
/// </summary>
public sealed record Typeface(string Name, string File, string Package)
{
    public static readonly IReadOnlyList<Typeface> All =
    [
        new("DejaVu", "DejaVuSans.ttf", "fonts-dejavu-core"),
        new("Liberation", "LiberationSans-Regular.ttf", "fonts-liberation"),
    ];

    public static Typeface Named(string name) => All.Single(t => t.Name == name);

    /// <summary>A file for fontconfig, written into the folder, by which a program sees these fonts alone.</summary>
    public string Configuration(string folder)
    {
        var file = Path.Combine(folder, $"{Name}.conf");
        System.IO.File.WriteAllText(file, $"""
            <?xml version="1.0"?>
            <!DOCTYPE fontconfig SYSTEM "urn:fontconfig:fonts.dtd">
            <fontconfig>
              <dir>{Folder()}</dir>
              <include ignore_missing="yes">/etc/fonts/conf.d</include>
              <cachedir>{Path.Combine(folder, "fontconfig")}</cachedir>
            </fontconfig>
            """);
        return file;
    }

    private string Folder()
    {
        string[] places = ["/usr/share/fonts", "/usr/local/share/fonts",
            Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData), "fonts")];
        var font = places.Where(Directory.Exists).SelectMany(p => Directory.EnumerateFiles(p, File, SearchOption.AllDirectories))
            .FirstOrDefault();
        Assert.True(font is not null, $"There is no {File} under {string.Join(" or ", places)}. Install {Package}.");
        return Path.GetDirectoryName(font)!;
    }
}
