using FitCheck.Catalog;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Values;

namespace FitCheck.Charts.BestMount;

/// <summary>What a chart asks of a driver again and again.</summary>
internal sealed class ChartedDriver(Driver driver, Practice practice, int pattern)
{
    public Driver Driver => driver;
    public LengthTerm Flange { get; } = LengthTerm.Of(driver.Dimensions?.Flange);
    public LengthTerm FlangeMinor { get; } = LengthTerm.Of(driver.Dimensions?.FlangeMinor);
    public LengthTerm Cutout { get; } = LengthTerm.Of(driver.Dimensions?.Cutout);
    public LengthTerm CutoutMinor { get; } = LengthTerm.Of(driver.Dimensions?.CutoutMinor);
    public LengthTerm Depth { get; } = LengthTerm.Of(driver.Dimensions?.Depth);
    public LengthTerm FrontHeight { get; } = LengthTerm.Of(driver.Dimensions?.FrontHeight);
    public LengthTerm FlangeThickness { get; } = LengthTerm.Of(driver.Dimensions?.FlangeThickness);
    /// <summary>Nothing for a tweeter.</summary>
    public LengthTerm Travel { get; } = driver.IsTweeter ? LengthTerm.Exactly(0) : LengthTerm.Of(MountingFacts.Travel(driver));
    public LengthTerm Circle { get; } = LengthTerm.Of(driver.Holes?.Circle);
    public LengthTerm Screw { get; } = LengthTerm.Of(MaterialFacts.Exact(driver.Holes?.Screw), practice.ScrewSize);
    public LengthTerm Mass { get; } = LengthTerm.Of(driver.Mass);
    public BodyVariants Body { get; } = BodyVariants.Of(driver, acrossShortAxis: false);
    /// <summary>Of an oval one; of a round one it is not asked.</summary>
    public BodyVariants BodyMinor { get; } = BodyVariants.Of(driver, acrossShortAxis: driver.Oval);
    /// <summary>Drivers with the same screw holes have the same number here.</summary>
    public int Pattern => pattern;
}
