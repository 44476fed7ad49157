using System.Text.RegularExpressions;

namespace FitCheck.Tests.Facts;

/// <summary>Reference builds as if another car were meant.</summary>
internal static partial class StandInText
{
    /// <summary>Without waivers, which would hide what is asked, and without what is expected of the vehicle itself.</summary>
    public static string Plain(string build) =>
        Waived().Replace(File.ReadAllText(RepositoryRoot.Of("catalog", "builds", build + ".yaml")), "");

    public static string Meant(string build) => VehicleLine().Replace(Plain(build), "$0\ninstead_of: Aunt Olga's estate", 1);

    public static string VehicleOf(string build) => VehicleLine().Match(Plain(build)).Groups[1].Value;

    [GeneratedRegex(@"(?m)^vehicle: ([\w-]+).*$")]
    private static partial Regex VehicleLine();

    [GeneratedRegex(@"(?ms)^(waive|expect):.*?(?=^\w|\z)")]
    private static partial Regex Waived();
}
