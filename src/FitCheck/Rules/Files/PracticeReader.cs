using FitCheck.Facts.Values;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Yaml;

namespace FitCheck.Rules.Files;

/// <summary>
/// Reads `practice.yaml`: `{ is: 13.8 V, what, source }` or, where the figure is two bounds, `{ from: 18 W, to: 22 W, what, source }`.
/// </summary>
internal sealed class PracticeReader(ProblemList problems)
{
    /// <summary>Its name, in the first directory of rules.</summary>
    public const string FileName = Id + ".yaml";

    /// <summary>What its path gives it for an id.</summary>
    public const string Id = "practice";

    /// <summary>Said of one in a later directory.</summary>
    public const string OnlyFirst = "only the first directory of rules may have these figures, for rules that are never waived rest on "
        + "them; a later one changes limits of rules";

    private static readonly Lazy<Practice> Own = new(ReadOwn);

    /// <summary>Those that come with the program, for rules that have no such file.</summary>
    public static Practice OfProgram => Own.Value;

    /// <summary>The names of all figures, in the order of the file.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. PracticeFigure.All.Select(f => f.Name)];

    /// <summary>The figures of a file; null when it has a mistake.</summary>
    public static Practice? Read(string reported, byte[] bytes, ProblemList problems)
    {
        var own = new ProblemList(ProblemKind.BrokenRule);
        var read = SourceText.Decode(reported, bytes, own) is { } source && YamlReader.Read(source, own) is { } root
            ? new PracticeReader(own).Read(root) : null;
        problems.AddRange(own.Sorted());
        return own.HasErrors ? null : read;
    }

    private Practice? Read(YamlNode root)
    {
        if (root is not YamlMap map)
        {
            problems.Error(root.At, $"this needs a mapping of figures by their names, found {root.Kind}");
            return null;
        }
        var keys = new RuleKeys(map, "the figures of practice", problems, [.. Names]);
        var practice = new Practice();
        foreach (var figure in PracticeFigure.All)
        {
            if (keys.Require(figure.Name) is { } node && Bounds(node, figure) is { } bounds)
                practice = figure.Put(practice, bounds);
        }
        return practice;
    }

    private Between? Bounds(YamlNode node, PracticeFigure figure)
    {
        var owner = $"the figure `{figure.Name}`";
        if (node is not YamlMap map)
        {
            problems.Error(node.At,
                $"{owner} needs {(figure.IsRange ? "`from` and `to`" : "`is`")}, `what` and `source`, found {node.Kind}");
            return null;
        }
        var keys = new RuleKeys(map, owner, problems, figure.IsRange ? ["from", "to", "what", "source"] : ["is", "what", "source"]);
        (_, _) = (keys.Text("what"), keys.Text("source"));
        if (!figure.IsRange)
            return Number(keys, "is", owner, figure.Dimension) is { } number ? new Between(number, number) : null;
        if (Number(keys, "from", owner, figure.Dimension) is not { } low || Number(keys, "to", owner, figure.Dimension) is not { } high)
            return null;
        if (low < high)
            return new Between(low, high);
        problems.Error(map["from"]!.At, $"`from` of {owner} must be less than its `to`");
        return null;
    }

    private double? Number(RuleKeys keys, string key, string owner, Dimension dimension)
    {
        if (keys.Require(key) is not { } node || keys.Scalar(node, key, $"a number in {dimension}") is not { } scalar)
            return null;
        var number = dimension == Dimension.One && QuantityText.ParseNumber(scalar.Text) is { } bare ? bare
            : QuantityText.Parse(scalar.Text) is { Tolerance: null, Provenance: null } quantity && quantity.Dimension == dimension
                ? quantity.Si : double.NaN;
        if (number > 0 && double.IsFinite(number))
            return number;
        problems.Error(scalar.At, $"`{key}` of {owner} needs a number above 0 in {dimension}, found `{scalar.Text}`");
        return null;
    }

    // What is embedded was tried by the tests.
    private static Practice ReadOwn()
    {
        using var stream = typeof(PracticeReader).Assembly.GetManifestResourceStream(FileName)
            ?? throw new InvalidOperationException($"the program has no {FileName}");
        using var text = new MemoryStream();
        stream.CopyTo(text);
        var problems = new ProblemList();
        return Read($"rules/{FileName}", text.ToArray(), problems)
            ?? throw new InvalidOperationException(string.Join('\n', problems.Sorted().Select(p => p.Message)));
    }
}
