using FitCheck.Facts.Contexts;
using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Electrical.Networks;
using Xunit;

namespace FitCheck.Tests.Physics.Electrical;

/// <summary>A load that was solved before is known again by all that it is made of, and by nothing less.</summary>
public sealed class EqualLoadsTests
{
    private static readonly DriverModel Woofer = new(3.2, 0.3e-3, 60, 4, 0.8), Tweeter = new(3.4);

    // Of each key of a load and of its branches one that differs in it alone.
    public static TheoryData<string> Keys => [.. Others.Keys];

    private static readonly Dictionary<string, Func<ChannelLoad>> Others = new()
    {
        ["Branches"] = () => Load() with { Branches = [Branch()] },
        ["SharedWireResistance"] = () => Load() with { SharedWireResistance = 0.2 },
        ["SharedElements"] = () => Load() with { SharedElements = [LadderElement.InLine(capacitance: 100e-6)] },
        ["InSeries"] = () => Load() with { InSeries = 2 },
        ["Driver"] = () => With(Branch() with { Driver = Woofer with { Tweeter = new CoaxialTweeter(4.7e-6, 3) } }),
        ["Elements"] = () =>
            With(Branch() with { Elements = [LadderElement.Across(resistance: 8), LadderElement.InLine(inductance: 1e-3)] }),
        ["WireResistance"] = () => With(Branch() with { WireResistance = 0.11 }),
        ["AlsoInSeries"] = () => With(Branch() with { AlsoInSeries = [Tweeter] }),
    };

    [Fact]
    public void Loads_of_the_same_parts_are_one()
    {
        Assert.Equal(Load(), Load());
        Assert.Equal(Load().GetHashCode(), Load().GetHashCode());
        var solved = new SolvedLoads();
        Assert.Same(solved.Of(Load()), solved.Of(Load()));
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void Another_part_makes_another_load(string key)
    {
        Assert.NotEqual(Load(), Others[key]());
        Assert.NotEqual(Others[key](), Load());
    }

    [Fact]
    public void No_key_of_a_load_is_forgotten() =>
        Assert.Equal(new[] { typeof(ChannelLoad), typeof(ChannelBranch) }.SelectMany(t => t.GetProperties())
            .Select(p => p.Name).Order(StringComparer.Ordinal), Others.Keys.Order(StringComparer.Ordinal));

    [Fact]
    public void Of_many_loads_the_oldest_are_solved_again()
    {
        var solved = new SolvedLoads();
        var first = solved.Of(Load());
        for (var i = 1; i <= 600; i++)
            solved.Of(With(Branch() with { WireResistance = i }));
        Assert.NotSame(first, solved.Of(Load()));
        Assert.Equal(first.MinOhm, solved.Of(Load()).MinOhm);
    }

    [Fact]
    public void Threads_that_share_a_load_read_what_one_reads()
    {
        var (alone, shared) = (Load().Sweep(), Load().Sweep());
        var (watts, ohm) = (alone.ProgrammePower(0, 10), alone.MinOhm);
        var wrong = 0;
        using var start = new Barrier(8);
        var threads = Enumerable.Range(0, 8).Select(_ => new Thread(() =>
        {
            start.SignalAndWait();
            for (var n = 0; n < 200; n++)
            {
                if (!shared.ProgrammePower(0, 10).Equals(watts) || !shared.MinOhm.Equals(ohm))
                    Interlocked.Increment(ref wrong);
            }
        })).ToList();
        threads.ForEach(t => t.Start());
        threads.ForEach(t => t.Join());
        Assert.Equal(0, wrong);
    }

    private static ChannelLoad Load() => With(Branch());

    private static ChannelLoad With(ChannelBranch first) => new([first, new ChannelBranch(Tweeter)], 0.1);

    private static ChannelBranch Branch() =>
        new(Woofer with { }, [LadderElement.InLine(inductance: 1e-3), LadderElement.Across(resistance: 8)], 0.1);
}
