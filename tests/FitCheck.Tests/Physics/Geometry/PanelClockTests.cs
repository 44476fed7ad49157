using FitCheck.Physics.Geometry;
using Xunit;

namespace FitCheck.Tests.Physics.Geometry;

public class PanelClockTests
{
    private static readonly PanelClock LeftDoor = new(new Direction(0, -1, 0));
    private static readonly PanelClock RightDoor = new(new Direction(0, 1, 0));

    [Theory]
    [InlineData(0, 0, 1)] // up
    [InlineData(3, 1, 0)] // facing the left door, forward is to the right
    [InlineData(9, -1, 0)]
    [InlineData(10.5, -0.7071, 0.7071)] // up and back
    public void On_a_left_door_three_is_forward(double hour, double x, double z) => Close(new Direction(x, 0, z), LeftDoor.At(hour));

    [Fact]
    public void On_a_right_door_three_is_backward() => Close(new Direction(-1, 0, 0), RightDoor.At(3));

    [Fact]
    public void On_a_flat_panel_twelve_is_forward() => Close(new Direction(1, 0, 0), new PanelClock(new Direction(0, 0, 1)).At(0));

    [Fact]
    public void A_leaning_axis_makes_the_angle_it_is_told() => // cos 8° by a table: 0.9903
        Assert.Equal(0.9903, LeftDoor.Leaning(8 * Math.PI / 180, 10.5).Dot(new Direction(0, -1, 0)), 1e-4);

    [Fact]
    public void An_hour_is_found_again()
    {
        for (var hour = 0.25; hour < 12; hour += 0.5)
            Assert.Equal(hour, RightDoor.HourOf(RightDoor.At(hour) + new Direction(0, 5, 0))!.Value, 1e-9);
    }

    [Fact]
    public void On_a_panel_that_faces_upward_twelve_leans_with_it()
    {
        // By hand: the normal leans 45 degrees from the right toward the roof, so what is up in the panel leans by 45 degrees to the left;
        // forward stays to the right.
        var panel = new PanelClock(new Direction(0, -2, 2));
        Close(new Direction(0, 0.70711, 0.70711), panel.At(0));
        Close(new Direction(1, 0, 0), panel.At(3));
        Assert.Equal(6, panel.HourOf(new Direction(0, 0, -1))!.Value, 1e-9);
    }

    [Fact]
    public void On_a_panel_that_faces_forward_and_to_the_right_three_is_forward_and_to_the_left() // by hand: (-0.6, 0.8, 0) × (0, 0, 1)
        => Close(new Direction(0.8, 0.6, 0), new PanelClock(new Direction(3, -4, 0)).At(3));

    [Fact]
    public void Vectors_multiply_as_in_any_text() // by hand
    {
        Close(new Direction(-3, 6, -3), new Direction(1, 2, 3).Cross(new Direction(4, 5, 6)));
        Close(new Direction(0.6, 0, 0.8), new Direction(3, 0, 4).Normalized());
        Assert.Equal(Math.PI / 4, new Direction(1, 0, 0).AngleTo(new Direction(5, 5, 0)), 1e-9);
        Assert.Equal(Math.PI / 2, new Direction(2, 0, 0).AngleTo(new Direction(0, 0, 3)), 1e-9);
        Close(Direction.Multiply(new Direction(1, 2, 3), -1), Direction.Negate(new Direction(1, 2, 3)));
        Close(new Direction(5, 7, 9), Direction.Add(new Direction(1, 2, 3), new Direction(4, 5, 6)));
    }

    [Fact]
    public void Straight_ahead_there_is_no_hour() => Assert.Null(LeftDoor.HourOf(new Direction(0, -2, 0)));

    private static void Close(Direction expected, Direction actual) =>
        Assert.True((expected + -actual).Length < 1e-4, $"{expected} {actual}");
}
