using System.CommandLine;
using FitCheck.Physics.Quantities;

namespace FitCheck.Cli.Output;

/// <summary>In which units each format tells lengths, as `--units` asks for.</summary>
internal static class UnitsOfFormats
{
    // Read by programs, which count on millimetres.
    private static readonly string[] OfMachines = ["json", "csv", "sarif", "junit", "github"];

    /// <summary>The units of a word after `--units`; null without one.</summary>
    public static LengthUnits? Parse(string? word) =>
        word switch { "inch" => LengthUnits.Inch, "mm" => LengthUnits.Millimetre, _ => null };

    /// <summary>Those of a format; on the sheet, which goes into the workshop, inches stand behind the millimetres.</summary>
    public static LengthUnits Of(string format, LengthUnits asked) => Array.IndexOf(OfMachines, format) >= 0 ? LengthUnits.Millimetre
        : format == "sheet" && asked == LengthUnits.Inch ? LengthUnits.Both : asked;

    /// <summary>An option that takes only these words.</summary>
    public static Option<string?> Among(this Option<string?> option, params string[] words)
    {
        option.AcceptOnlyFromAmong(words);
        return option;
    }
}
