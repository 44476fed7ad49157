namespace FitCheck.Reports.Svg.Plan;

/// <summary>Where a label stands: beside the body on the left or right, or in front of it or behind it.</summary>
internal enum LabelPlace
{
    Left,
    Right,
    Front,
    Rear,
}

/// <summary>
/// Labels at the two sides of the body, those of the middle at its nearer end, so that no two ever meet. The paper is as high as they need.
/// </summary>
internal sealed class PlanLayout
{
    /// <summary>The edges of the two columns towards the body, and from there to the text.</summary>
    public const double LeftEdge = 108, RightEdge = SectionPaper.Width - LeftEdge, Inset = 5;

    private const double Gap = 5, EndGap = 16, MostAtAnEnd = 2;

    public PlanLayout(IReadOnlyList<PlanPlace> places)
    {
        var spots = PlaceSpots.Of(places);
        Paper = new PlanPaper(spots);
        Places = Distributed(places, spots);
        Labels = [.. places.Select((p, i) => new PlanLabel(p, Room(Places[i])))];
        var tops = new double[places.Count];
        var front = EndHeight(LabelPlace.Front);
        var tallest = Math.Max(Tall(LabelPlace.Left), Tall(LabelPlace.Right));
        var height = Math.Max(Paper.Length, tallest);
        Paper.Top = 2 + front + ((height - Paper.Length) / 2);
        Marks = Paper.Marks(spots);
        SetColumn(LabelPlace.Left, 2 + front, 2 + front + height, tops);
        SetColumn(LabelPlace.Right, 2 + front, 2 + front + height, tops);
        foreach (var i in At(LabelPlace.Front))
            tops[i] = 1 + front - EndGap - Labels[i].Height;
        foreach (var i in At(LabelPlace.Rear))
            tops[i] = 2 + front + height + EndGap;
        Tops = tops;
        Bottom = 2 + front + height + EndHeight(LabelPlace.Rear);
    }

    public PlanPaper Paper { get; }

    /// <summary>Of each position, in the order given.</summary>
    public IReadOnlyList<LabelPlace> Places { get; }

    public IReadOnlyList<PlanLabel> Labels { get; }

    public IReadOnlyList<double> Tops { get; }

    public IReadOnlyList<Spot> Marks { get; }

    /// <summary>Below all labels.</summary>
    public double Bottom { get; }

    /// <summary>The edge of a label towards the body, in the middle of its side.</summary>
    public Spot Tie(int i) => Places[i] switch
    {
        LabelPlace.Left => new(LeftEdge, Tops[i] + (Labels[i].Height / 2)),
        LabelPlace.Right => new(RightEdge, Tops[i] + (Labels[i].Height / 2)),
        LabelPlace.Front => new(EndMiddle(i), Tops[i] + Labels[i].Height),
        _ => new(EndMiddle(i), Tops[i]),
    };

    private IEnumerable<int> At(LabelPlace place) => Enumerable.Range(0, Places.Count).Where(i => Places[i] == place);

    private static double Room(LabelPlace place) =>
        place is LabelPlace.Left or LabelPlace.Right ? LeftEdge - Inset - 2 : (SectionPaper.Width / MostAtAnEnd) - 8;

    // One alone stands by its mark, as far as the edge of the paper allows; two share the width.
    private double EndMiddle(int i)
    {
        int[] all = [.. At(Places[i]).OrderBy(n => Marks[n].X).ThenBy(n => n)];
        var half = SectionPaper.Width / MostAtAnEnd / 2;
        return all.Length == 1 ? Math.Clamp(Marks[i].X, half, SectionPaper.Width - half)
            : half + (2 * half * Array.IndexOf(all, i));
    }

    private double EndHeight(LabelPlace end) => At(end).Any() ? At(end).Max(i => Labels[i].Height) + EndGap : 0;

    private double Tall(LabelPlace side) => Spread.Length([.. At(side).Select(i => Labels[i].Height)], Gap);

    private void SetColumn(LabelPlace side, double from, double to, double[] tops)
    {
        int[] down = [.. At(side).OrderBy(i => Marks[i].Y).ThenBy(i => i)];
        var middles = Spread.Apart([.. down.Select(i => Marks[i].Y)], [.. down.Select(i => Labels[i].Height)], Gap, from, to);
        for (var n = 0; n < down.Length; n++)
            tops[down[n]] = middles[n] - (Labels[down[n]].Height / 2);
    }

    // What finds no room at an end goes to the side that has less.
    private static LabelPlace[] Distributed(IReadOnlyList<PlanPlace> places, IReadOnlyList<Floor> spots)
    {
        var found = new LabelPlace[places.Count];
        var counts = new int[4];
        for (var i = 0; i < found.Length; i++)
        {
            if (places[i].Side is "left" or "right")
                counts[(int)(found[i] = places[i].Side == "left" ? LabelPlace.Left : LabelPlace.Right)]++;
        }
        for (var i = 0; i < found.Length; i++)
        {
            if (places[i].Side is "left" or "right")
                continue;
            var end = spots[i].Forward > 0 ? LabelPlace.Front : LabelPlace.Rear;
            if (counts[(int)end] >= MostAtAnEnd)
                end = counts[(int)LabelPlace.Left] <= counts[(int)LabelPlace.Right] ? LabelPlace.Left : LabelPlace.Right;
            counts[(int)(found[i] = end)]++;
        }
        return found;
    }
}
