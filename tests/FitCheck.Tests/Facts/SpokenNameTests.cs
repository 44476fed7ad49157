using FitCheck.Findings;
using Xunit;

namespace FitCheck.Tests.Facts;

public class SpokenNameTests
{
    // What a person would say of the part on the bench, by plain reading.
    [Theory]
    [InlineData("Tapping screws ST4.2 x 25, pan head, pack of 16", "Tapping screws ST4.2 x 25, pan head")]
    [InlineData("Bipolar capacitor 10 uF 100 V, pair", "Bipolar capacitor 10 uF 100 V")]
    [InlineData("Heat-shrink 9 mm to 3 mm with adhesive, 10 pieces", "Heat-shrink 9 mm to 3 mm with adhesive")]
    [InlineData("Crimp receptacles 6.3 mm and 4.8 mm, ten pairs", "Crimp receptacles 6.3 mm and 4.8 mm")]
    [InlineData("Power cable 8 AWG, copper-clad, 5 m", "Power cable 8 AWG, copper-clad, 5 m")]
    [InlineData("Drayle R4-40 amplifier, 4 channels", "Drayle R4-40 amplifier, 4 channels")]
    [InlineData(", pair", ", pair")]
    [InlineData("Orrin T25 tweeter", "Orrin T25 tweeter")]
    public void A_name_is_said_without_its_pack(string name, string said) => Assert.Equal(said, SpokenName.Of(name));
}
