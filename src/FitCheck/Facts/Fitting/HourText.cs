namespace FitCheck.Facts.Fitting;

/// <summary>An hour of the clock face as people say it, to the nearest half: "half past ten", "four o'clock".</summary>
internal static class HourText
{
    private static readonly string[] Numbers = ["twelve", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
        "eleven"];

    public static string Of(double hour)
    {
        var halves = (int)Math.Round((((hour % 12) + 12) % 12) * 2, MidpointRounding.AwayFromZero) % 24;
        var number = Numbers[halves / 2];
        return halves % 2 == 0 ? $"{number} o'clock" : $"half past {number}";
    }
}
