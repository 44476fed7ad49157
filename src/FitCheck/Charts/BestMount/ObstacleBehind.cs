using FitCheck.Catalog;
using FitCheck.Facts.Fitting;

namespace FitCheck.Charts.BestMount;

/// <summary>
/// Something behind the panel; those with the same number stand at the same hours and from the same radius on, for the same lean.
/// </summary>
/// <param name="Depth">Behind the mounting plane.</param>
/// <param name="Where">Its number; 0 where it stands everywhere.</param>
/// <param name="FromRadius">Where it begins.</param>
/// <param name="Reach">How deep a body reaches there.</param>
/// <param name="IsAside">Whether it begins at a radius.</param>
internal readonly record struct ObstacleBehind(LengthTerm Depth, int Where, LengthTerm FromRadius, BodyFormula Reach, bool IsAside)
{
    /// <param name="position">Where it stands.</param>
    /// <param name="thing">What it is; null for all that limits the free depth.</param>
    /// <param name="number">Gives what is the same the same number.</param>
    public static ObstacleBehind Of(Position position, Obstruction? thing, Func<object, int> number)
    {
        var reach = ObstructionReach.Of(position, thing);
        var radius = LengthTerm.Of(reach.FromRadius, 0);
        return new(LengthTerm.Of(thing is null ? position.Mounting.Depth : thing.Depth), reach.IsEverywhere ? 0
            : number(("thing", radius, reach.Sector, reach.AimClock)), radius, reach.Reach,
            thing?.FromRadius is { Si: > 0 });
    }
}
