namespace FitCheck.Reports.Svg.Plan;

/// <summary>
/// Metres of the vehicle on the paper: forward is up, left is left. The body reaches a little beyond its outermost positions, and is
/// stretched where so many of them lie on one side that their marks would touch.
/// </summary>
internal sealed class PlanPaper
{
    public const double Middle = SectionPaper.Width / 2;
    public const double HalfBody = 52;

    /// <summary>Of a mark, and what stays free around it.</summary>
    public const double Mark = 16, Between = 5;

    private const double Bonnet = 0.75, ShortestFront = 1.5, Tail = 0.35, ShortestRear = -1.25;
    private readonly double _front, _perMetreAside;

    public PlanPaper(IReadOnlyList<Floor> spots)
    {
        var halfWidth = Math.Max(0.72, spots.Select(s => Math.Abs(s.Left)).DefaultIfEmpty().Max()) + 0.13;
        _front = Math.Max(ShortestFront, spots.Select(s => s.Forward).DefaultIfEmpty().Max() + Bonnet);
        Rear = Math.Min(ShortestRear, spots.Select(s => s.Forward).DefaultIfEmpty().Min() - Tail);
        Windscreen = Math.Max(0.75, spots.Select(s => s.Forward).DefaultIfEmpty().Max()) + 0.18;
        _perMetreAside = HalfBody / halfWidth;
        Columns = [.. spots.Select(ColumnOf)];
        var most = Columns.GroupBy(c => c).Select(g => g.Count()).DefaultIfEmpty().Max();
        Length = Math.Max((_front - Rear) * _perMetreAside, (most * (Mark + Between)) + 40);
    }

    /// <summary>Of the body, in user units.</summary>
    public double Length { get; }

    /// <summary>Where the body begins; set once it is known what stands above it.</summary>
    public double Top { get; set; }

    public double Bottom => Top + Length;

    /// <summary>Metres forward of the rear end and of the windscreen.</summary>
    public double Rear { get; }

    public double Windscreen { get; }

    /// <summary>For each position -1 where its mark lies left of the middle, 1 right of it, 0 on it.</summary>
    public IReadOnlyList<int> Columns { get; }

    public double X(double left) => Middle - (left * _perMetreAside);

    public double Y(double forward) => Top + ((_front - forward) * Length / (_front - Rear));

    public Spot At(double forward, double left) => new(X(left), Y(forward));

    /// <summary>Where the marks lie: as near to their places as can be without touching, in the order of the vehicle.</summary>
    public Spot[] Marks(IReadOnlyList<Floor> spots)
    {
        var marks = new Spot[spots.Count];
        for (var column = -1; column <= 1; column++)
        {
            int[] inIt = [.. Enumerable.Range(0, spots.Count).Where(i => Columns[i] == column).OrderByDescending(i => spots[i].Forward)];
            var apart = Spread.Apart([.. inIt.Select(i => Y(spots[i].Forward))], [.. inIt.Select(_ => Mark)], Between, Top + 6, Bottom - 6);
            for (var n = 0; n < inIt.Length; n++)
                marks[inIt[n]] = new(Middle + (column * Aside(spots[inIt[n]])), apart[n]);
        }
        return marks;
    }

    // Marks beside the middle keep clear of those on it, and within the body.
    private double Aside(Floor spot) => Math.Clamp(Math.Abs(spot.Left) * _perMetreAside, Mark + Between, HalfBody - 9);

    private int ColumnOf(Floor spot) => Math.Abs(spot.Left) * _perMetreAside < (Mark + Between) / 2 ? 0 : -Math.Sign(spot.Left);
}
