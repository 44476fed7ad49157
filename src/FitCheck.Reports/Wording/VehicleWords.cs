using FitCheck.Evaluation;
using FitCheck.Lists;

namespace FitCheck.Reports.Wording;

/// <summary>
/// What vehicle a report is about. One that the catalog does not have is named as the build names it, and where its figures come from is
/// said beside the name, wherever that stands at the head.
/// </summary>
internal static class VehicleWords
{
    public static string Of(BuildResult build) => Of(build.VehicleName, build.StandIn);

    public static string Of(PartsList list) => Of(list.VehicleName, list.StandIn);

    /// <summary>Null where the catalog has the vehicle.</summary>
    public static string? Note(string? standIn) => standIn is null ? null
        : $"The catalog does not have this car: what stands here of it is guessed from the nearest vehicle, the {standIn}, and has to be "
            + "measured; `fitcheck new part vehicle` begins an entry of its own.";

    private static string Of(string name, string? standIn) => Note(standIn) is { } note ? $"{name}. {note}" : name;
}
