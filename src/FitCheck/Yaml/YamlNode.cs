using FitCheck.Foundation.Problems;

namespace FitCheck.Yaml;

/// <summary>A node of a YAML document that knows where it stands.</summary>
internal abstract record YamlNode(Location At)
{
    /// <summary>The word for it in a message.</summary>
    public abstract string Kind { get; }
}

/// <summary>A scalar. <paramref name="Quoted"/> scalars are always text.</summary>
internal sealed record YamlScalar(Location At, string Text, bool Quoted) : YamlNode(At)
{
    /// <summary>True for what a build tells of its own vehicle or parts, put in the place of what a catalog has.</summary>
    public bool IsReading { get; init; }

    /// <summary>True for what was written of another thing than the one that is meant: no better than a guess, whatever it says.</summary>
    public bool IsTakenOver { get; init; }

    public override string Kind => Quoted ? "text" : $"`{Text}`";
}

/// <summary>A key, where it stands, and its value.</summary>
internal sealed record YamlEntry(string Key, Location KeyAt, YamlNode Value);

/// <summary>A mapping, in the order it was written; keys are unique.</summary>
internal sealed record YamlMap(Location At, IReadOnlyList<YamlEntry> Entries) : YamlNode(At)
{
    public override string Kind => "a mapping";

    public YamlNode? this[string key]
    {
        get
        {
            foreach (var entry in Entries)
            {
                if (entry.Key == key)
                    return entry.Value;
            }
            return null;
        }
    }
}

/// <summary>A sequence.</summary>
internal sealed record YamlList(Location At, IReadOnlyList<YamlNode> Items) : YamlNode(At)
{
    public override string Kind => "a list";
}
