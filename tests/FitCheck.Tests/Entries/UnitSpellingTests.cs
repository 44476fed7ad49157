using FitCheck.Fixes;
using Xunit;

namespace FitCheck.Tests.Entries;

/// <summary>
/// What has one reading is spelled as the catalog does; what has two is left alone. The readings are the trade's, not the program's.
/// </summary>
public sealed class UnitSpellingTests
{
    [Theory]
    [InlineData("resistance", "4 Ohms", "4 ohm")]
    [InlineData("resistance", "3.4Ω", "3.4 ohm")]
    [InlineData("resistance", "3.4 \u2126", "3.4 ohm")] // the ohm sign, not the Greek letter
    [InlineData("resistance", "4\u00A0ohm", "4 ohm")] // a space that does not break
    [InlineData("length", "65mm", "65 mm")]
    [InlineData("length", "6.5\"", "6.5 in")]
    [InlineData("length", "2-9/16 inches", "2 9/16 in")]
    [InlineData("length", "65 millimeters +- 1 mm (measured)", "65 mm ± 1 mm (measured)")]
    [InlineData("length", "65 mm +/- 1 mm", "65 mm +/- 1 mm")]
    [InlineData("area", "137 cm²", "137 cm2")]
    [InlineData("gauge", "14awg", "14 AWG")]
    [InlineData("gauge", "1/0 Awg", "1/0 AWG")]
    [InlineData("capacitance", "4.7µF", "4.7 uF")]
    [InlineData("force-factor", "4.85 Tm", "4.85 T m")]
    [InlineData("angle", "12°", "12 deg")]
    [InlineData("sensitivity", "90dB @1W/1m", "90 dB @ 1 W/1 m")]
    [InlineData("sensitivity", "90 dB/W/m", "90 dB @ 1 W/1 m")]
    [InlineData("sensitivity", "92 dB (2.83V/1m)", "92 dB @ 2.83 V/1 m")]
    [InlineData("filter", "80Hz @ 12dB/oct", "80 Hz @ 12 dB/octave")]
    [InlineData("crossover-limit", "3 kHz, 12 dB/octave", "3 kHz @ 12 dB/octave")]
    [InlineData("money", "99.00 eur", "99.00 EUR")]
    [InlineData("money", "€99.00", "99.00 EUR")]
    public void One_reading_is_spelled_out(string kind, string written, string spelled) =>
        Assert.Equal(spelled, UnitSpelling.Of(kind, written));

    [Theory]
    [InlineData("length", "65")] // millimetres or inches?
    [InlineData("length", "2,5 mm")] // a comma for the decimals, or for thousands
    [InlineData("length", "65 mm ± 1")] // millimetres or per cent
    [InlineData("power", "60 W RMS")] // not the same as rated noise power
    [InlineData("power", "60 mW")]
    [InlineData("resistance", "4 MOhm")] // milli or mega
    [InlineData("sensitivity", "90 dB")] // at 1 W or at 2.83 V
    [InlineData("sensitivity", "90 dB @ 1 W/0.5 m")]
    [InlineData("filter", "80 Hz @ 20 dB/octave")]
    [InlineData("money", "$99.00")] // of which country
    [InlineData("money", "99,00 EUR")]
    [InlineData("id", "4 Ohms")]
    public void Two_readings_are_left_alone(string kind, string written) => Assert.Null(UnitSpelling.Of(kind, written));
}
