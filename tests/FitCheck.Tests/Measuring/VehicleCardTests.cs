using FitCheck.Catalog;
using FitCheck.Foundation.Problems;
using FitCheck.Reports.Format;
using FitCheck.Reports.Measuring;
using FitCheck.Schemas;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.Measuring;

/// <summary>The card of a vehicle has a field for all that its schema takes.</summary>
public class VehicleCardTests
{
    // Keys that are no reading, each with the reason.
    private static readonly string[] Excused =
    [
        // what an entry is called, and what stands above the columns: the place by its name
        "id", "kind", "name", "provenance", "source", "notes", "positions", "mirror_of", "side", "role", "place",
        // the list itself, and what of its items a line of the card holds together
        "mounting.obstructions", "mounting.obstructions.*.moving", "mounting.obstructions.*.from_clock", "mounting.obstructions.*.to_clock",
        "mounting.obstructions.*.depth", "mounting.obstructions.*.from_radius", "mounting.holes",
        // a factory driver is told by its size and its impedance; what nobody reads in a car
        "factory_driver", "factory_driver.sensitivity", "factory_driver.has_own_capacitor", "feed.network",
    ];

    [Fact]
    public void Every_key_of_a_place_has_a_field()
    {
        var shown = VehicleCard.AtPlace.Select(a => a.Of).ToHashSet(StringComparer.Ordinal);

        Assert.Equal([], [.. SchemaKeys.Of("vehicle", "positions").Where(k => !shown.Contains(k) && !Excused.Contains(k))]);
    }

    [Fact]
    public void Every_key_of_the_car_has_a_field()
    {
        var shown = VehicleCard.Whole.Select(a => a.Of).ToHashSet(StringComparer.Ordinal);

        Assert.Equal([], [.. SchemaKeys.Of("vehicle").Where(k => !k.StartsWith("positions", StringComparison.Ordinal)
            && !shown.Contains(k) && !Excused.Contains(k))]);
    }

    [Fact]
    public void A_key_that_the_schema_does_not_have_is_on_no_card()
    {
        var known = SchemaKeys.Of("vehicle", "positions").ToHashSet(StringComparer.Ordinal);

        Assert.Equal([], [.. VehicleCard.AtPlace.Select(a => a.Of.Replace("window glass", SchemaKeys.Name, StringComparison.Ordinal))
            .Where(k => !known.Contains(k))]);
        Assert.Equal([], [.. VehicleCard.Whole.Select(w => w.Of).Except(SchemaKeys.Of("vehicle"), StringComparer.Ordinal)]);
    }

    [Fact]
    public void What_an_entry_has_is_printed_and_only_the_rest_is_asked_for()
    {
        var catalog = FitCheck.Catalog.PartsCatalog.Open([RepositoryRoot.Of("catalog")], new FitCheck.Foundation.Problems.ProblemList());
        using var card = new StringWriter();
        VehicleCard.Write((FitCheck.Catalog.Vehicle)catalog.Find("tansy-hatch")!, catalog.Written("tansy-hatch") as FitCheck.Yaml.YamlMap,
            ReportOptions.Default with { TemplatesDirectory = RepositoryRoot.Of("reports") }, card);

        Assert.Contains("<span class=\"known\">158 mm</span>", card.ToString(),
            StringComparison.Ordinal); // its hole, catalog/vehicles/tansy-hatch.yaml
        Assert.Contains("class=\"field\"", card.ToString(), StringComparison.Ordinal);
    }
}
