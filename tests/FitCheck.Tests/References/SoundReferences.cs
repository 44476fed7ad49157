using FitCheck.Physics.Acoustics;
using Xunit;

namespace FitCheck.Tests.References;

public class SoundReferences
{
    [Theory]
    [InlineData("niosh.85", "derived from NIOSH 98-126 formula", 85.0, 480.0)]
    [InlineData("niosh.88", "derived from NIOSH 98-126 formula", 88.0, 240.0)]
    [InlineData("niosh.91", "derived from NIOSH 98-126 formula", 91.0, 120.0)]
    [InlineData("niosh.94", "derived from NIOSH 98-126 formula", 94.0, 60.0)]
    [InlineData("niosh.97", "derived from NIOSH 98-126 formula", 97.0, 30.0)]
    [InlineData("niosh.100", "derived from NIOSH 98-126 formula", 100.0, 15.0)]
    public void Allowed_time_by_NIOSH(string id, string source, double level, double minutes) =>
        Reference.Near(id, source, minutes, NoiseExposure.AllowedTime(level) / 60, 1e-12);

    [Theory]
    [InlineData("osha.80", "S: 29 CFR 1910.95 App A Table G-16a", 80.0, 32.0)]
    [InlineData("osha.81", "S: 29 CFR 1910.95 App A Table G-16a", 81.0, 27.9)]
    [InlineData("osha.82", "S: 29 CFR 1910.95 App A Table G-16a", 82.0, 24.3)]
    [InlineData("osha.83", "S: 29 CFR 1910.95 App A Table G-16a", 83.0, 21.1)]
    [InlineData("osha.84", "S: 29 CFR 1910.95 App A Table G-16a", 84.0, 18.4)]
    [InlineData("osha.85", "S: 29 CFR 1910.95 App A Table G-16a", 85.0, 16.0)]
    [InlineData("osha.86", "S: 29 CFR 1910.95 App A Table G-16a", 86.0, 13.9)]
    [InlineData("osha.92", "S: 29 CFR 1910.95 App A Table G-16a", 92.0, 6.1)]
    [InlineData("osha.90", "derived from 29 CFR 1910.95 App A Table G-16a", 90.0, 8.0)]
    [InlineData("osha.95", "derived from 29 CFR 1910.95 App A Table G-16a", 95.0, 4.0)]
    [InlineData("osha.105", "derived from 29 CFR 1910.95 App A Table G-16a", 105.0, 1.0)]
    [InlineData("osha.110", "derived from 29 CFR 1910.95 App A Table G-16a", 110.0, 0.5)]
    [InlineData("osha.115", "derived from 29 CFR 1910.95 App A Table G-16a", 115.0, 0.25)]
    public void Allowed_time_by_OSHA(string id, string source, double level, double hours) =>
        // three digits are printed
        Reference.Near(id, source, hours, NoiseExposure.AllowedTime(level, criterionLevel: 90, criterionTime: 8, exchangeRate: 5), 0.008);

    [Theory]
    [InlineData("osha.dose.92", "S: 29 CFR 1910.95 App A Table G-16a", 92.0, 90.0, 5.0, 131.0, 1.0)]
    [InlineData("dose.69.6", "S: PMC8169711 Table 3", 69.6, 90.0, 5.0, 5.9, 0.05)]
    [InlineData("dose.69.6", "S: PMC8169711 Table 3", 69.6, 85.0, 3.0, 2.8, 0.06)]
    public void Dose_of_eight_hours(string id, string source, double level, double criterion, double exchange, double percent,
        double within)
    {
        var allowed = NoiseExposure.AllowedTime(level, criterion, criterionTime: 8, exchange);
        Reference.Close(id, source, percent, NoiseExposure.Dose(8, allowed) * 100, within);
    }

    [Theory]
    [InlineData("who.adult", "S: WHO-ITU H.870", 80.0, 40.0)]
    public void Weekly_allowance(string id, string source, double level, double hours) =>
        Reference.Near(id, source, hours, NoiseExposure.AllowedTime(level, criterionLevel: 80, criterionTime: 40, exchangeRate: 3), 1e-12);

    [Theory]
    [InlineData("add.62.73", "S: 10db.co.uk decibel maths", 62.0, 73.0, 73.3)]
    [InlineData("add.80.85", "S: lecture slides, slideplayer.com 522252", 80.0, 85.0, 86.2)]
    [InlineData("add.80.80", "S: lecture slides, slideplayer.com 522252", 80.0, 80.0, 83.0)]
    public void Independent_sounds_add(string id, string source, double a, double b, double db) =>
        Reference.Close(id, source, db, SoundLevel.Incoherent(a, b), 0.05);

    [Theory]
    [InlineData("coh.80.85", "S: lecture slides, slideplayer.com 522252", 80.0, 85.0, 88.9)]
    [InlineData("coh.80.80", "S: lecture slides, slideplayer.com 522252", 80.0, 80.0, 86.0)]
    public void Sounds_in_phase_add(string id, string source, double a, double b, double db) =>
        Reference.Close(id, source, db, SoundLevel.Coherent(a, b), 0.05);

    [Theory]
    [InlineData("dist", "derived from 10db.co.uk decibel maths", 2.0, -6.0206)]
    [InlineData("dist", "derived from 10db.co.uk decibel maths", 0.8, 1.9382)]
    public void Level_falls_with_distance(string id, string source, double to, double db) =>
        Reference.Close(id, source, db, SoundLevel.DistanceChange(1, to), 5e-5);
}
