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
    public void Straight_ahead_there_is_no_hour() => Assert.Null(LeftDoor.HourOf(new Direction(0, -2, 0)));

    private static void Close(Direction expected, Direction actual) => Assert.True((expected + -actual).Length < 1e-4, $"{expected} {actual}");
}
