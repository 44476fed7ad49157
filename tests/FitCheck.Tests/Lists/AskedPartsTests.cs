using FitCheck.Lists;
using Xunit;

namespace FitCheck.Tests.Lists;

public sealed class AskedPartsTests
{
    // Without tape under the spacer and without a ring: seal/bare-spacer-on-metal and seal/gap-to-the-door-card speak at both doors.
    private const string Bare = """
        kind: build
        name: Bare
        vehicle: tansy-hatch
        budget: 200.00 EUR
        fit:
          - at: [front-door-left, front-door-right]
            driver: orrin-c165
            adapter: spacer-165-tansy-18
            harness: harness-duo-a-48-28
          - {at: [front-tweeter-left, front-tweeter-right], disconnected: true}
        """;

    private const string Cheaper = """
        id: ring-165-bargain
        kind: sundry
        name: Bargain ring
        type: gasket-ring
        provenance: datasheet
        source: test
        pack: 2
        price: PRICE
        availability: AVAILABILITY
        free_height: 25 mm
        compressed_height: 3 mm
        """;

    [Fact]
    public void A_part_is_asked_for_once_for_all_its_places_and_bought_as_a_pair()
    {
        var list = Listed.Of(Bare);

        // By hand: the gap to the door card is 40 - 18 - 4 = 18 mm between spacer, flange and card. The ring of 20 mm (7.90 EUR) reaches it
        // only if the tolerances are kind, so a rule warns; that of 25 mm (8.40 EUR) reaches it always. Tape of 5.90 EUR is the cheapest
        // that closes the spacer.
        Assert.Equal(["1 × foam-tape-6x10", "1 × ring-165-25"], list.Asked());
        Assert.Equal(14.30m, Assert.Single(list.AskedTotals).Amount); // 5.90 + 8.40
        Assert.Equal(0, list.Asked[1].Line.LeftPieces);
        Assert.Equal(["front-door-left", "front-door-right"], list.Asked[1].By.Select(b => b.Position));
        Assert.All(list.Asked[1].By, b => Assert.Equal("seal/gap-to-the-door-card", b.Rule));
        Assert.Empty(list.Unanswered);
    }

    [Fact]
    public void What_is_asked_for_is_not_in_the_list_of_the_build_nor_in_its_total()
    {
        var list = Listed.Of(Bare);

        Assert.Equal(130.50m, Assert.Single(list.Totals).Amount); // 89.00 + 32.00 + 9.50
        Assert.Equal(144.80m, Assert.Single(list.AllTotals).Amount); // 130.50 + 14.30
    }

    [Theory]
    [InlineData("1.00 EUR", "current", true)]
    [InlineData("1.00 EUR", "to-order", false)] // what is in stock comes first
    [InlineData("1.00 EUR", "discontinued", false)] // nobody can buy it
    [InlineData("1.00 USD", "current", false)] // prices are compared in the budget's currency
    public void The_cheapest_that_can_be_had_is_taken(string price, string availability, bool taken)
    {
        var text = Cheaper.Replace("PRICE", price, StringComparison.Ordinal)
            .Replace("AVAILABILITY", availability, StringComparison.Ordinal);
        var list = Listed.Of(Bare, ("sundries/ring-165-bargain.yaml", text));

        Assert.Equal(taken, list.Asked.Any(a => a.Line.Part == "ring-165-bargain"));
        Assert.Equal(!taken, list.Asked.Any(a => a.Line.Part == "ring-165-25"));
    }

    [Fact]
    public void What_lies_on_the_list_already_costs_nothing_more()
    {
        var list = Listed.Of(Bare + """

              - at: [rear-door-left, rear-door-right]
                driver: orrin-c165
                adapter: spacer-165-tansy-rear-10
                harness: harness-duo-a-48-28
                with: [foam-tape-3x12]
            """);

        // The roll of the rear doors (6.90 EUR) serves the front doors too; a second roll of another sort would cost 5.90 EUR.
        Assert.Contains("0 × foam-tape-3x12", list.Asked());
    }

    [Fact]
    public void What_nothing_cures_is_told()
    {
        var list = Listed.Of("""
            kind: build
            name: Tweeters
            vehicle: tansy-hatch
            fit:
              - {at: [front-tweeter-left, front-tweeter-right], driver: orrin-t25, cup: cup-45-tansy}
            """);

        Assert.Equal(["tweeter/full-range-feed", "tweeter/full-range-feed"],
            list.Unanswered.Where(u => u.Wanted == "capacitor").Select(u => u.Rule));
    }

    [Fact]
    public void A_waived_finding_asks_for_nothing()
    {
        var list = Listed.Of(Bare + """

            waive:
              - {rule: seal/gap-to-the-door-card, at: [front-door-left, front-door-right], reason: The old ring stays.}
            """);

        Assert.DoesNotContain(list.Asked, a => a.By.Any(b => b.Rule == "seal/gap-to-the-door-card"));
    }
}
