namespace FitCheck.Reports.Svg.Plan;

/// <summary>What stands beside the plan about one position: its name, its state, what is fitted, and whether that changed.</summary>
internal sealed class PlanLabel
{
    private const double Row = 13.5, Icon = 11;
    private readonly IReadOnlyList<string> _name, _fitted;
    private readonly PlanPlace _place;

    public PlanLabel(PlanPlace place, double room)
    {
        _place = place;
        Room = room;
        _name = Lettering.Lines(Spaced(place.Name), 2, room, Lettering.Label);
        _fitted = place.Fitted is null ? [] : Lettering.Lines(Spaced(place.Fitted), 2, room, Lettering.Tick);
    }

    public double Room { get; }

    public double Height => ((_name.Count + 1 + _fitted.Count + (_place.Changed ? 1 : 0)) * Row) + 5;

    /// <param name="svg">Where it is drawn.</param>
    /// <param name="edge">Its edge towards the body, or its middle.</param>
    /// <param name="top">Its upper edge.</param>
    /// <param name="anchor">Towards which its text is set.</param>
    public void Draw(SvgWriter svg, double edge, double top, Anchor anchor)
    {
        var y = top + 11;
        foreach (var line in _name)
            Write(line, "label");
        var state = anchor switch
        {
            Anchor.Start => edge,
            Anchor.End => edge - Icon,
            _ => edge - ((Lettering.WidthOf(_place.Word, Lettering.Label, bold: true) + Icon + 4) / 2),
        };
        svg.Picture(new(state + (Icon / 2), y - 4), PlanShapes.Of(_place), PlanShapes.Class(_place), Icon / 16);
        svg.Text(new(anchor == Anchor.End ? state - 4 : state + Icon + 4, y), _place.Word, $"state {PlanShapes.Class(_place)}",
            anchor == Anchor.End ? Anchor.End : Anchor.Start);
        y += Row;
        foreach (var line in _fitted)
            Write(line, "tick");
        if (_place.Changed)
            Write("changed", "changed");

        void Write(string line, string cssClass)
        {
            svg.Text(new(edge, y), line, cssClass, anchor);
            y += Row;
        }
    }

    // Hidden breaks and tabs are spaces of a line.
    private static string Spaced(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
