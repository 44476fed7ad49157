using FitCheck.Catalog;
using FitCheck.Findings;

namespace FitCheck.Reports.Svg.Plan;

/// <summary>A position of a vehicle as its plan shows it.</summary>
/// <param name="Id">Of the position.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Side">`left`, `right` or `centre`.</param>
/// <param name="Place">`door`, `dash` and so on; it says where the mark goes where no location is recorded.</param>
/// <param name="Location">Metres forward and to the left, from the point between the front seats' heads; empty when not recorded.</param>
internal sealed record PlanPlace(string Id, string Name, string Side, string Place, IReadOnlyList<double> Location)
{
    /// <summary>The worst of what is found there; null where nothing was judged.</summary>
    public Status? Status { get; init; }

    /// <summary>What is fitted there, in few words; null where nothing is.</summary>
    public string? Fitted { get; init; }

    /// <summary>Whether the last action changed something there.</summary>
    public bool Changed { get; init; }

    public static PlanPlace Of(Position position) =>
        new(position.Id, position.Name, position.Side, position.Place, [.. position.Location.Select(f => f.Si)]);

    /// <summary>Its state in a word: that of its status, else `empty` or `not judged`.</summary>
    public string Word => Status?.Word() ?? (Fitted is null ? "empty" : "not judged");
}
