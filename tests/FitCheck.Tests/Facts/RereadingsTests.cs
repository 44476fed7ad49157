using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using Xunit;

namespace FitCheck.Tests.Facts;

/// <summary>Where only tolerances leave a limit open, the figures that weigh most are to be read again.</summary>
public sealed class RereadingsTests
{
    [Fact]
    public void The_two_that_weigh_most_are_told_first()
    {
        var stack = new Stack(Dimension.Metre);
        var glass = stack.Need("glass", "gauge", Figure("55 mm ± 1.5 mm"));
        var driver = stack.Need("driver", "gauge", Figure("56 mm ± 1 mm"));
        var spacer = stack.Need("spacer", "calliper", Figure("10 mm ± 0.1 mm"));
        var fact = stack.Of(v => v[glass] - v[driver] + v[spacer]);
        Assert.Equal(["glass", "driver"], fact.Rereadings!.Told().Select(u => u.What), StringComparer.Ordinal);
    }

    [Fact]
    public void The_reading_that_is_told_passes_with_the_others_at_their_worst()
    {
        var stack = new Stack(Dimension.Metre);
        var glass = stack.Need("glass", "gauge", Figure("55 mm ± 1.5 mm"));
        var driver = stack.Need("driver", "gauge", Figure("56 mm ± 1 mm"));
        var fact = stack.Of(v => v[glass] - v[driver]);
        // by hand: 5 mm are asked; 56 + 1 + 5 = 62 mm, and a reading is itself good to 0.5 mm (common practice, no source)
        Assert.Equal("62.5 mm or more", fact.Rereadings!.Told()[0].Passing!(new PassLimit(5e-3, AtLeast: true)));
    }

    [Fact]
    public void Exact_figures_need_no_second_reading()
    {
        var stack = new Stack(Dimension.Metre);
        var hole = stack.Need("hole", "calliper", Figure("40 mm ± 0 mm"));
        Assert.Null(stack.Of(v => v[hole]).Rereadings);
    }

    private static Figure Figure(string text) => new(QuantityText.Parse(text)!.Value, new Location("v.yaml", 1, 1), Provenance.Measured);
}
