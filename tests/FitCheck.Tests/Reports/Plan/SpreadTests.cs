using FitCheck.Reports.Svg.Plan;
using Xunit;

namespace FitCheck.Tests.Reports.Plan;

// All worked by hand.
public class SpreadTests
{
    [Fact]
    public void What_has_room_stays_where_it_is() => Assert.Equal([10, 40], Spread.Apart([10, 40], [10, 10], 5, 0, 100));

    [Fact]
    public void Two_on_one_spot_part_by_halves() => Assert.Equal([42.5, 57.5], Spread.Apart([50, 50], [10, 10], 5, 0, 100));

    [Fact]
    public void At_the_edge_all_move_inward() => Assert.Equal([5, 20], Spread.Apart([2, 2], [10, 10], 5, 0, 100));

    [Fact]
    public void Where_there_is_no_room_it_goes_on_beyond_the_end() =>
        Assert.Equal([5, 20, 35], Spread.Apart([9, 9, 9], [10, 10, 10], 5, 0, 20));

    [Fact]
    public void Nothing_is_nothing() => Assert.Empty(Spread.Apart([], [], 5, 0, 20));
}
