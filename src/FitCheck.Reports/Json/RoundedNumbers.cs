using System.Globalization;
using System.Text.Json;

namespace FitCheck.Reports.Json;

/// <summary>Six significant digits: finer than any datum of the trade, coarse enough that two machines agree to the byte.</summary>
internal static class RoundedNumbers
{
    /// <summary>Writes the number, or null when it is missing or no number.</summary>
    public static void WriteRounded(this Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number && double.IsFinite(number))
            json.WriteNumber(name, Round(number));
        else
            json.WriteNull(name);
    }

    /// <summary>Also turns a difference that is only floating-point dust into the zero it stands for, never `-0`.</summary>
    public static double Round(double value)
    {
        if (Math.Abs(value) < 1e-12)
            return 0;
        return double.Parse(value.ToString("G6", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }
}
