using System.Globalization;

namespace FitCheck.Page.Server;

/// <summary>What `fitcheck page` hands over, word by word; it has looked at them.</summary>
internal sealed record ServerArguments
{
    public List<string> Catalogs { get; } = [];

    public List<string> Rules { get; } = [];

    /// <summary>0 for a free one.</summary>
    public int Port { get; private set; }

    /// <summary>A build with which the page begins.</summary>
    public string? Build { get; private set; }

    /// <summary>Whether a browser is opened.</summary>
    public bool Opens { get; private set; } = true;

    /// <summary>The process with which this one ends, where it is a child; null where it took its place.</summary>
    public int? Parent { get; private set; }

    public static ServerArguments Read(string[] args)
    {
        var read = new ServerArguments();
        for (var i = 0; i < args.Length; i++)
        {
            switch (args[i])
            {
                case "--no-open":
                    read.Opens = false;
                    continue;
                case var name when i + 1 == args.Length:
                    throw Unmeant(name);
            }
            read.Take(args[i], args[++i]);
        }
        return read.Catalogs.Count > 0 && read.Rules.Count > 0 ? read : throw Unmeant("no folders");
    }

    private void Take(string name, string value)
    {
        switch (name)
        {
            case "--catalog":
                Catalogs.Add(value);
                break;
            case "--rules":
                Rules.Add(value);
                break;
            case "--build":
                Build = value;
                break;
            case "--port" when ushort.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var port):
                Port = port;
                break;
            case "--parent" when int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var parent):
                Parent = parent;
                break;
            default:
                throw Unmeant($"{name} {value}");
        }
    }

    private static CannotServeException Unmeant(string words) =>
        new($"the page is opened with `fitcheck page`; its server does not know `{words}`");
}
