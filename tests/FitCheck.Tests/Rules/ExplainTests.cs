using FitCheck.Rules;
using Xunit;

namespace FitCheck.Tests.Rules;

/// <summary>What `explain` prints.</summary>
public sealed class ExplainTests
{
    [Fact]
    public void The_sample_is_explained_from_its_file_alone() => Assert.Equal(
        """
        mount/too-deep
        Depth of the driver against the space behind the panel

        What it asks
          of each  position
          when     has_driver and not in_cup
          fact     depth_margin (in mm)
          warns    below 3 mm
          fails    below 0 mm

        Why
          A magnet that touches the glass or the frame can't be mounted, or breaks the window.

        What to do
          Put a spacer under the driver, or choose a flatter one.

        Caution
          Wind the glass down before anything is screwed in.

        Source
          common practice, no source

        What it says
          pass     {{ value }} is left behind the driver.
          warn     Only {{ value }} is left behind the driver; {{ limit }} is wanted.
          measure  Whether the driver fits is not known. Measure {{ wanted }}.
          fail     The driver is {{ short }} too deep for {{ name }}. Add at least {{ short }} of
                   spacer.

        Examples
          pass     comfortable: 8 mm
          pass     on the warning limit: 3 mm
          warn     close: 1 mm
          warn     touching: 0 mm
          warn     could be either: 1 mm, from -1 mm to 3 mm
          fail     too deep: -4 mm
          measure  guessed: 8 mm, estimated
          measure  not recorded: unknown
          fail     by facts: depth_margin = -1 mm, has_driver = yes, in_cup = no
          none     not asked: has_driver = no

        Facts
          has_driver    Whether the build puts a driver here. (true or false)
          in_cup        Whether the driver sits in a cup. (true or false)
          depth_margin  Depth left behind the driver. (mm)

        """, Explain.Text(RuleTestFacts.Rule(SampleRule.TooDeep), RuleTestFacts.Declared));
}
