using FitCheck.Physics.Electrical.Loads;
using Xunit;

namespace FitCheck.Tests.References;

public class LPadReferences
{
    [Theory]
    [InlineData("lpad.4.1", "derived from the formula, from memory", 4.0, 1.0, 0.435, 32.782)]
    [InlineData("lpad.4.2", "derived from the formula, from memory", 4.0, 2.0, 0.82269, 15.448)]
    [InlineData("lpad.4.5", "derived from the formula, from memory", 4.0, 5.0, 1.7506, 5.1395)]
    [InlineData("lpad.4.6", "derived from the formula, from memory", 4.0, 6.0, 1.9953, 4.019)]
    [InlineData("lpad.4.12", "derived from the formula, from memory", 4.0, 12.0, 2.9952, 1.3418)]
    [InlineData("lpad.8.1", "derived from the formula, from memory", 8.0, 1.0, 0.86999, 65.564)]
    [InlineData("lpad.8.2", "derived from the formula, from memory", 8.0, 2.0, 1.6454, 30.897)]
    [InlineData("lpad.8.4", "derived from the formula, from memory", 8.0, 4.0, 2.9523, 13.678)]
    [InlineData("lpad.8.5", "derived from the formula, from memory", 8.0, 5.0, 3.5013, 10.279)]
    [InlineData("lpad.8.6", "derived from the formula, from memory", 8.0, 6.0, 3.9905, 8.0381)]
    [InlineData("lpad.8.8", "derived from the formula, from memory", 8.0, 8.0, 4.8151, 5.2914)]
    [InlineData("lpad.8.10", "derived from the formula, from memory", 8.0, 10.0, 5.4702, 3.6998)]
    [InlineData("lpad.8.12", "derived from the formula, from memory", 8.0, 12.0, 5.9905, 2.6836)]
    public void Resistors(string id, string source, double load, double db, double series, double shunt)
    {
        var pad = LPad.For(load, db);
        Reference.Near(id, source, series, pad.Series, 5e-5);
        Reference.Near(id, source, shunt, pad.Shunt, 5e-5);
    }

    [Theory]
    [InlineData("lpad.p.3", "derived from the formula, from memory", 3.0, 0.29205, 0.20676, 0.50119)]
    [InlineData("lpad.p.6", "derived from the formula, from memory", 6.0, 0.49881, 0.25, 0.25119)]
    [InlineData("lpad.p.10", "derived from the formula, from memory", 10.0, 0.68377, 0.21623, 0.1)]
    public void Power_shares(string id, string source, double db, double series, double shunt, double load)
    {
        var shares = LPad.For(4, db).PowerShares(4);
        Reference.Near(id, source, series, shares.Series, 5e-5);
        Reference.Near(id, source, shunt, shares.Shunt, 5e-5);
        Reference.Near(id, source, load, shares.Load, 5e-5);
    }
}
