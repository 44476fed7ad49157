namespace FitCheck.Reports.Svg;

/// <summary>From millimetres of the section to places on the paper.</summary>
internal sealed class SectionPaper
{
    /// <summary>Of every drawing: two stand side by side on A4 at their true scale, and one on the screen of a telephone.</summary>
    public const double Width = 344;

    // Room for the words cabin and cavity beside the section.
    private const double Left = 44;
    private const double Right = 46;

    private readonly SectionScale _scale;
    private readonly double _x0;
    private readonly double _axisY;

    public SectionPaper(SectionScale scale, double top)
    {
        _scale = scale;
        var width = (scale.To - scale.From) * scale.PerMm;
        _x0 = Left + Math.Max(0, (Width - Left - Right - width) * 0.4);
        Top = top;
        _axisY = top + (scale.HalfHeight * scale.PerMm);
        Bottom = top + (2 * scale.HalfHeight * scale.PerMm);
    }

    public double Top { get; }

    public double Bottom { get; }

    public double FirstX => _x0;

    public double LastX => X(_scale.To);

    public double X(double z) => _x0 + ((z - _scale.From) * _scale.PerMm);

    public double Y(double r) => _axisY - (r * _scale.PerMm);

    public Spot At(Mm point) => new(X(point.Z), Y(point.R));

    public IEnumerable<Spot> At(IEnumerable<Mm> points) => points.Select(At);
}
