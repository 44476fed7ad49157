using FitCheck.Lists;
using Xunit;

namespace FitCheck.Tests.Lists;

public sealed class LeftoverTests
{
    [Fact]
    public void Pieces_and_metres_that_stay_are_counted()
    {
        var list = Listed.Of("""
            kind: build
            name: One side
            vehicle: corvid-sedan
            accepts: [cut-wires, trim-parts]
            fit:
              - at: [front-door-left]
                driver: orrin-w165-4
                adapter: spacer-165-corvid-6
                with: [heat-shrink-6-2]
                new_wire: {cable: speaker-cable-16awg-10m, length: 3.5 m}
              - {at: [front-tweeter-left], disconnected: true}
            """);

        Assert.Equal(1, list.Line("orrin-w165-4").LeftPieces); // a pack of 2, one used
        Assert.Equal(6.5, list.Line("speaker-cable-16awg-10m").LeftMetres!.Value, 9); // 10 m - 3.5 m
        Assert.Null(list.Line("heat-shrink-6-2").LeftPieces); // from the bag, not counted
    }

    [Fact]
    public void Supply_is_counted_in_pieces_and_metres_too()
    {
        var list = Listed.Of(File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "tansy-supply-afterthought.yaml")));

        Assert.Equal(0.8, list.Line("power-cable-8awg-cca-5m").LeftMetres!.Value, 9); // 5 m - 4.2 m
        Assert.Equal(0.5, list.Line("power-cable-8awg-ground-1m").LeftMetres!.Value, 9); // three runs of 0.5 m from two rolls of 1 m
        Assert.Equal((1, 5, 4),
            (list.Line("fuse-blade-20").Needed, list.Line("fuse-blade-20").Pack, list.Line("fuse-blade-20").LeftPieces));
    }

    [Fact]
    public void Currencies_are_never_added_up()
    {
        var text = Trial.Entry("adapters/spacer-165-corvid-6.yaml");
        var list = Listed.Of("""
            kind: build
            name: Two currencies
            vehicle: corvid-sedan
            accepts: [cut-wires, trim-parts]
            fit:
              - {at: [front-door-left, front-door-right], driver: orrin-w165-4, adapter: spacer-165-corvid-6}
            """, ("adapters/spacer-165-corvid-6.yaml",
                System.Text.RegularExpressions.Regex.Replace(text, "price: .*", "price: 20.00 CHF")));

        Assert.Equal(["20.00 CHF", "119.00 EUR"], list.Totals.Select(t => t.ToString())); // as the entries say
    }
}
