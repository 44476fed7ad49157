using FitCheck.Catalog;
using FitCheck.Foundation.Problems;
using Xunit;

namespace FitCheck.Tests.Catalog;

public sealed class MirroredPositionTests
{
    [Fact]
    public void What_is_taken_over_is_seen_in_a_mirror()
    {
        var right = Position("corvid-sedan", "front-door-right");

        Assert.Equal([320, 210, 85], right.Mounting.Holes!.Angles); // worked by hand: 360 less 40, 150, 275
        Assert.Equal(1.5, right.Mounting.AimClock); // worked by hand: 12 less half past ten
        var glass = right.Mounting.Obstructions.Single(o => o.Moving == true);
        // worked by hand: from half past eight to half past two, each to the other side
        Assert.Equal((9.5, 3.5), (glass.FromClock, glass.ToClock));
        Assert.Equal((0, 12),
            (Position("pellet-city", "front-door-right").Mounting.Obstructions[0].FromClock,
                Position("pellet-city", "front-door-right").Mounting.Obstructions[0].ToClock));
    }

    [Fact]
    public void What_a_mirrored_position_writes_itself_stands_as_written()
    {
        var right = Position("gannet-coupe", "front-door-right");

        Assert.Equal([335, 240, 155, 50], right.Mounting.Holes!.Angles); // as in the entry
        Assert.Equal(1.5, right.Mounting.AimClock); // as in the entry
        Assert.Equal((10, 4), (right.Mounting.Obstructions[0].FromClock, right.Mounting.Obstructions[0].ToClock)); // as in the entry
    }

    [Fact]
    public void The_position_that_is_mirrored_stays_as_it_is() =>
        Assert.Equal([40, 150, 275], Position("corvid-sedan", "front-door-left").Mounting.Holes!.Angles); // as in the entry

    private static Position Position(string vehicle, string position) =>
        ((Vehicle)PartsCatalog.Open([RepositoryRoot.Of("catalog")], new ProblemList()).Find(vehicle)!).Find(position)!;
}
