namespace FitCheck.Physics.Quantities;

/// <summary>How lengths are told to people.</summary>
internal enum LengthUnits
{
    /// <summary>Millimetres, and metres from two on.</summary>
    Millimetre,
    /// <summary>Decimal inches.</summary>
    Inch,
    /// <summary>Millimetres with inches behind them, for paper in a workshop.</summary>
    Both,
}

/// <summary>
/// In which units lengths are told now, and how inches are written: the one place that knows. What is computed, compared and read stays in
/// SI; areas, volumes and whatever has a length in it stay in their units.
/// </summary>
internal static class Lengths
{
    /// <summary>International yard and pound agreement, 1959: exact.</summary>
    public const double Inch = 0.0254;

    /// <summary>The finest division of an inch rule, and of inch drills.</summary>
    public const int Parts = 64;

    private static readonly AsyncLocal<(LengthUnits? Asked, LengthUnits? OfBuild)> Now = new();

    /// <summary>In which units lengths are told: as was asked, else as the build says, else in millimetres.</summary>
    public static LengthUnits Told => Now.Value.Asked ?? Now.Value.OfBuild ?? LengthUnits.Millimetre;

    /// <summary>Until it is disposed of, lengths are told so whatever a build says; null asks for nothing.</summary>
    public static Scope Asked(LengthUnits? units) => new((units ?? Now.Value.Asked, Now.Value.OfBuild));

    /// <summary>What was asked for, whatever a build says; null for nothing.</summary>
    public static LengthUnits? AskedFor => Now.Value.Asked;

    /// <summary>Until it is disposed of, this is what was asked for, and no build has said anything.</summary>
    public static Scope Exactly(LengthUnits? units) => new((units, null));

    /// <summary>Until it is disposed of, lengths are told so unless something else was asked for.</summary>
    public static Scope OfBuild(LengthUnits? units) => new((Now.Value.Asked, units));

    /// <summary>True for what this changes: a length of any unit.</summary>
    public static bool Concerns(Unit unit) => unit.Dimension == Dimension.Metre && Told != LengthUnits.Millimetre;

    /// <summary>Digits behind the point: a calliper's below an inch, a rule's above it, a tape's for ways of cables.</summary>
    public static int Decimals(double inches) => Math.Abs(inches) switch
    {
        < 1 => 3,
        < 100 => 2,
        _ => 1,
    };

    /// <summary>`2.56 in`.</summary>
    public static string InInches(double si) => $"{QuantityText.Number(si / Inch, Decimals(si / Inch))} in";

    /// <summary>
    /// As a fraction that a rule or a drill has, `5 41/64 in`; rounded up to the next part for what must be so large at least, down for
    /// what must be so large at most.
    /// </summary>
    public static string Fraction(double si, bool orMore)
    {
        // A millionth of a part forgives the arithmetic, not the size.
        var parts = (long)(orMore ? Math.Ceiling((si / Inch * Parts) - 1e-6) : Math.Floor((si / Inch * Parts) + 1e-6));
        var (whole, top, bottom) = (parts / Parts, parts % Parts, (long)Parts);
        while (top != 0 && top % 2 == 0)
            (top, bottom) = (top / 2, bottom / 2);
        var fraction = FormattableString.Invariant($"{top}/{bottom}");
        return $"{(top == 0 ? QuantityText.Number(whole, 0) : whole == 0 ? fraction : $"{QuantityText.Number(whole, 0)} {fraction}")} in";
    }

    /// <summary>Puts back what was told before.</summary>
    public readonly struct Scope : IDisposable
    {
        private readonly (LengthUnits? Asked, LengthUnits? OfBuild) _before;

        /// <summary>Whether lengths are told otherwise than before.</summary>
        public bool IsChange { get; }

        internal Scope((LengthUnits? Asked, LengthUnits? OfBuild) now)
        {
            _before = Now.Value;
            IsChange = (now.Asked ?? now.OfBuild ?? LengthUnits.Millimetre) != Told;
            if (now != _before)
                Now.Value = now;
        }

        /// <inheritdoc/>
        public void Dispose()
        {
            if (Now.Value != _before)
                Now.Value = _before;
        }
    }
}
