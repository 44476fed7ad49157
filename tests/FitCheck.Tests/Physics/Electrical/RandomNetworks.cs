using CsCheck;
using FitCheck.Physics.Electrical.Networks;

namespace FitCheck.Tests.Physics.Electrical;

/// <summary>A part of a random network.</summary>
internal readonly record struct RandomPart(int From, int To, char Kind, double Value)
{
    public void AddTo(Network network, double impedanceScale = 1)
    {
        switch (Kind)
        {
            case 'R': network.AddResistor(From, To, Value * impedanceScale); break;
            case 'L': network.AddInductor(From, To, Value * impedanceScale); break;
            default: network.AddCapacitor(From, To, Value / impedanceScale); break;
        }
    }
}

/// <summary>Passive networks of the size and values that channels have; node 1 carries the source.</summary>
internal static class RandomNetworks
{
    public const int Source = 1;

    public static readonly Gen<double> Hertz = Logarithmic(20, 20_000);

    /// <summary>A chain of resistors through all nodes keeps every node connected; other parts go anywhere.</summary>
    public static readonly Gen<RandomPart[]> Any =
        Gen.Int[2, 9]
            .SelectMany(nodes => Gen.Select(Chain(nodes), Part(nodes).Array[1, 14], (chain, more) => (RandomPart[])[.. chain, .. more]));

    public static readonly Gen<RandomPart[]> Resistors =
        Gen.Int[2, 9]
            .SelectMany(
            nodes => Gen.Select(Chain(nodes), Resistor(nodes).Array[1, 14], (chain, more) => (RandomPart[])[.. chain, .. more]));

    public static Network Build(IEnumerable<RandomPart> parts, double impedanceScale = 1)
    {
        var network = new Network();
        network.SetSource(Source);
        foreach (var part in parts)
            part.AddTo(network, impedanceScale);
        return network;
    }

    public static Gen<double> Logarithmic(double low, double high) => Gen.Double[Math.Log(low), Math.Log(high)].Select(Math.Exp);

    private static Gen<RandomPart[]> Chain(int nodes) =>
        Logarithmic(0.05, 50).Array[nodes].Select(ohms => ohms.Select((ohm, i) => new RandomPart(i, i + 1, 'R', ohm)).ToArray());

    private static Gen<RandomPart> Resistor(int nodes) =>
        Gen.Select(Gen.Int[0, nodes], Gen.Int[0, nodes], Logarithmic(0.05, 50), (a, b, ohm) => new RandomPart(a, b, 'R', ohm));

    private static Gen<RandomPart> Part(int nodes) => Gen.Select(Gen.Int[0, nodes], Gen.Int[0, nodes], Gen.OneOf(
        Logarithmic(0.05, 50).Select(v => ('R', v)), Logarithmic(1e-5, 1e-2).Select(v => ('L', v)),
        Logarithmic(1e-6, 1e-3).Select(v => ('C', v))),
        (a, b, part) => new RandomPart(a, b, part.Item1, part.Item2));
}
