using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Electrical.Cables;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Devices;

/// <summary>
/// What a cable may carry: as its maker says, and never more than its conductor carries by gauge, metal, insulation and place. What is not
/// recorded leaves it between two bounds.
/// </summary>
/// <param name="Cable">The cable.</param>
/// <param name="InEngineSpace">It lies in an engine space, at least at one end.</param>
/// <param name="Practice">Between which bounds insulation stands that nobody recorded.</param>
internal sealed record CableLimit(WiringPart Cable, bool InEngineSpace, Practice Practice)
{
    private static readonly FactType Amperes = FactType.Number(Dimension.Ampere);

    /// <summary>
    /// What the conductor carries, A, whatever its maker says; null without a gauge. One thinner than the table knows, or softer
    /// insulation, carries at most what the table begins with.
    /// </summary>
    public Uncertain? OfConductor
    {
        get
        {
            if (Cable.Gauge is not { } gauge)
                return null;
            var low = Lowest(Cable.Insulation?.Si ?? Practice.CableInsulation.Low) ?? 0;
            var high = Ampacity.Of(Math.Max(gauge.Si, Ampacity.ThinnestArea),
                Math.Max(Cable.Insulation?.Si ?? Practice.CableInsulation.High, Practice.CableInsulation.Low), Cable.Resistivity,
                InEngineSpace)!.Value;
            return new Uncertain(low, low, high, (high - low) / 2);
        }
    }

    /// <summary>The lower of both.</summary>
    /// <param name="fuse">Current that the cable is to be protected from: which insulation would do is told.</param>
    public FactValue Value(double? fuse)
    {
        var claim = Cable.Current is { } current ? Uncertain.Within(current.Si, current.HalfWidth) : (Uncertain?)null;
        if (claim is null && OfConductor is null)
            return FactValue.Unknown(Amperes, OfGauge());
        var conductor = OfConductor ?? new Uncertain(0, 0, double.PositiveInfinity, 0);
        var limit = claim is { } most ? Uncertain.Min(most, conductor) : conductor;
        var open = !conductor.IsExact && !limit.IsExact;
        return FactValue.Of(Dimension.Ampere, limit) with
        {
            Unsure =
            [
                .. Figures.Where(f => f.Figure.IsEstimated)
                    .Select(f =>
                    new Unsure(f.What, "It is only estimated; read it from the cable or from its data sheet.", Estimated: true)),
                .. open ? Unrecorded(fuse).Select(u => u with { IsBounded = true }) : [],
            ],
            Shown = open ? Text(limit) : null,
            Data = [.. Figures.Select(f => new Datum(f.What, f.Figure))],
        };
    }

    /// <summary>
    /// What the limit rests on, for a person:
    /// `by its gauge: 8 AWG of copper, insulation for 105 degC, in the engine space; its maker claims 300 A`.
    /// </summary>
    /// <param name="place">Where it lies.</param>
    public string Words(string place)
    {
        if (Cable.Gauge is not { } gauge || OfConductor is not { } conductor)
            return $"{(Cable.Current is null ? "no figure of its maker" : "by its maker")}; its gauge is not recorded";
        var insulation = Cable.Insulation is { } known ? $"insulation for {known}" : "insulation not recorded";
        var made = $"{WireGauge.NameOf(gauge.Si) ?? gauge.ToString()} of {Metal}, {insulation}, {place}";
        return Cable.Current is not { } claim ? $"by its gauge: {made}"
            : claim.Si <= conductor.Low ? $"by its maker; by its gauge {Text(conductor)}: {made}"
            : $"by its gauge: {made}; its maker claims {claim}";
    }

    private string Metal =>
        Cable.CopperClad ? "copper-clad aluminium" : Cable.Conductor?.Replace('-', ' ') ?? "a metal that is not recorded";

    private IEnumerable<(string What, Figure Figure)> Figures
    {
        get
        {
            foreach (var (what, figure) in new[] { ("gauge", Cable.Gauge), ("current", Cable.Current), ("insulation", Cable.Insulation) })
            {
                if (figure is not null)
                    yield return ($"{what} of {Cable.Name}", figure);
            }
        }
    }

    // A metal that nobody recorded may be the worse one.
    private double? Lowest(double insulation) => Cable.Gauge is { } gauge
        ? Ampacity.Of(gauge.Si, insulation, Cable.Conductor is null ? WireGauge.CopperCladAluminium : Cable.Resistivity,
        InEngineSpace) : null;

    private IEnumerable<Unsure> Unrecorded(double? fuse)
    {
        if (Cable.Gauge is null)
        {
            yield return OfGauge();
            yield break;
        }
        if (Cable.Conductor is null)
            yield return new Unsure($"conductor of {Cable.Name}",
                "Scrape a strand: copper is red all through, copper-clad aluminium is white inside.", Estimated: false)
            { Key = DatumKey.In(Cable, "conductor") };
        if (Cable.Insulation is null)
        {
            var enough = Ampacity.Insulations.Where(t => t <= Practice.CableInsulation.High && Lowest(t) >= fuse)
                .Select(t => $" ({QuantityText.Format(t, Dimension.Kelvin)} or more)").FirstOrDefault();
            yield return new Unsure($"insulation of {Cable.Name}{enough}",
                "Read the print on the jacket: it names the temperature that the insulation withstands.", Estimated: false)
            { Key = DatumKey.In(Cable, "insulation") };
        }
        else if (Lowest(Cable.Insulation.Si) is null)
        {
            yield return new Unsure($"current that {Cable.Name} carries",
                "No table knows a conductor so thin, or insulation that withstands so little: choose another cable.", Estimated: false);
        }
    }

    private Unsure OfGauge() =>
        new($"gauge of {Cable.Name}", "Read it from the cable, or measure its copper without the insulation.", Estimated: false)
        { Key = DatumKey.In(Cable, "gauge") };

    private static string Text(Uncertain amperes) =>
        amperes.IsExact ? Text(amperes.Low)
            : amperes.Low > 0 ? $"{Text(amperes.Low)} to {Text(amperes.High)}" : $"{Text(amperes.High)} at most";

    private static string Text(double amperes) => QuantityText.Format(amperes, Dimension.Ampere);
}
