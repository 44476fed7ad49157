using FitCheck.Drawings;
using FitCheck.Reports.Markup;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Svg;

/// <summary>What reaches the tweeters of one output, with the corner of each and the lowest corner that it stands.</summary>
internal static class TweeterPlot
{
    private const double Height = 104;

    private static readonly string[] Dashes = ["curve", "curve curve-2", "curve curve-3", "curve curve-4"];

    /// <summary>Null without tweeters.</summary>
    public static SafeHtml? Draw(string id, LoadCurve load)
    {
        if (load.Tweeters.Count == 0)
            return null;
        var axis = new FrequencyAxis(20, Height);
        var key = new PlotKey();
        for (var i = 0; i < load.Tweeters.Count; i++)
        {
            key.Add(Dashes[i % Dashes.Length], load.Tweeters[i].Name, "figure");
            key.Add(null, Figuring(load.Tweeters[i]));
        }
        using var svg = new SvgWriter(id, "plot", FrequencyAxis.Width, axis.Foot + key.Height, $"What reaches the tweeters of {load.Name}",
            string.Join(" ", load.Tweeters.Select(t => Say(t) + ".")));
        var top = Math.Max(6, Math.Ceiling(Highest(load) / 6) * 6);
        var bottom = top - 48;

        axis.Draw(svg);
        for (var db = Math.Floor(top / 12) * 12; db >= bottom; db -= 12)
            FrequencyAxis.DrawLevel(svg, Y(db), Figures.Bare(db, "dB"));
        svg.Text(new(2, 12), "dB at the tweeter, against the output", "tick");
        axis.DrawFrame(svg);
        for (var i = 0; i < load.Tweeters.Count; i++)
            DrawOne(svg, axis, load, load.Tweeters[i], Dashes[i % Dashes.Length], (bottom, Y));
        key.Draw(svg, axis.Foot);
        return svg.Finish();

        double Y(double db) => axis.Top + ((top - Math.Clamp(db, bottom, top)) / (top - bottom) * Height);
    }

    private static double Highest(LoadCurve load)
    {
        var highest = 0.0;
        foreach (var tweeter in load.Tweeters)
        {
            foreach (var db in tweeter.Db)
                highest = double.IsFinite(db) ? Math.Max(highest, Math.Min(db, 24)) : highest;
        }
        return highest;
    }

    private static void DrawOne(SvgWriter svg, FrequencyAxis axis, LoadCurve load, TweeterCurve tweeter, string style,
        (double Bottom, Func<double, double> Y) level)
    {
        if (tweeter.LowestAllowedHz is { } lowest && FrequencyAxis.Covers(lowest))
        {
            svg.Line(new(FrequencyAxis.X(lowest), axis.Top), new(FrequencyAxis.X(lowest), axis.Bottom), "limit-line");
            svg.Shape([new(FrequencyAxis.X(lowest), axis.Bottom), new(FrequencyAxis.X(lowest) - 5, axis.Bottom + 7),
                new(FrequencyAxis.X(lowest) + 5, axis.Bottom + 7)], "point");
        }
        svg.Shape(Points(), style, closed: false);
        if (tweeter.CornerHz is { } corner && FrequencyAxis.Covers(corner))
            svg.Dot(new(FrequencyAxis.X(corner), level.Y(LevelAt(load, tweeter, corner))), 4.5, "point");

        IEnumerable<Spot> Points()
        {
            for (var i = 0; i < Math.Min(load.Points.Count, tweeter.Db.Count); i++)
            {
                if (FrequencyAxis.Covers(load.Points[i].Hz) && tweeter.Db[i] >= level.Bottom)
                    yield return new(FrequencyAxis.X(load.Points[i].Hz), level.Y(tweeter.Db[i]));
            }
        }
    }

    private static double LevelAt(LoadCurve load, TweeterCurve tweeter, double hz)
    {
        var best = 0.0;
        var distance = double.MaxValue;
        for (var i = 0; i < Math.Min(load.Points.Count, tweeter.Db.Count); i++)
        {
            var away = Math.Abs(Math.Log(load.Points[i].Hz / hz));
            if (away < distance)
                (best, distance) = (tweeter.Db[i], away);
        }
        return best;
    }

    private static string Say(TweeterCurve tweeter) => $"{tweeter.Name}: {Figuring(tweeter)}";

    private static string Figuring(TweeterCurve tweeter)
    {
        var corner = tweeter.CornerHz is { } hz ? $"corner {Figures.Hertz(hz)} (dot)" : "no corner: low notes pass";
        var lowest = tweeter.LowestAllowedHz is { } least ? $"allowed from {Figures.Hertz(least)} (triangle)"
            : "lowest allowed " + Sentences.Unknown;
        return $"{corner}; {lowest}";
    }
}
