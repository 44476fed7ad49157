namespace FitCheck.Drawings;

/// <summary>Everything that a page draws of one build.</summary>
internal sealed record Pictures(IReadOnlyList<PositionDrawing> Positions, IReadOnlyList<LoadCurve> Loads,
    IReadOnlyList<WiringDiagram> Wirings, SupplyDiagram? Supply)
{
    public static readonly Pictures None = new([], [], [], null);
}
