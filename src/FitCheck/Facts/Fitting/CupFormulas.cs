namespace FitCheck.Facts.Fitting;

/// <summary>The lengths of a tweeter, of its cup and of the place in which that is.</summary>
internal interface ICuppedTweeter<T> where T : ILength<T>
{
    /// <summary>Diameter of its body.</summary>
    T Body { get; }
    T Flange { get; }
    T Depth { get; }
    T FrontHeight { get; }
    T CupHole { get; }
    T CupOuter { get; }
    T CupDepth { get; }
    T CupGrilleGap { get; }
    T CupRecess { get; }
    /// <summary>The hole that the cup needs in the panel.</summary>
    T CupCutout { get; }
    /// <summary>True when the cup is a bezel that was made for this place, so that the tweeter itself reaches into the panel.</summary>
    bool IsCupMadeHere { get; }

    /// <summary>The hole in the panel.</summary>
    T Hole { get; }
    T LargestHole { get; }
    /// <summary>The free depth behind the panel.</summary>
    T PlaceDepth { get; }
    /// <summary>Before the panel, to the factory grille.</summary>
    T GrilleGap { get; }
}

/// <summary>What a cup has to spare around a tweeter, and a place around both, for numbers of whatever kind.</summary>
internal static class CupFormulas<TPair, T> where T : ILength<T> where TPair : ICuppedTweeter<T>
{
    public static T HoleGap(in TPair pair) => T.Difference(pair.CupHole, pair.Body);

    /// <summary>When the hole is enlarged to the body.</summary>
    public static T WallLeft(in TPair pair) => T.Difference(pair.CupOuter, pair.Body, 0.5);

    public static T DepthMargin(in TPair pair) => T.Difference(pair.CupDepth, pair.Depth);

    public static T GrilleMargin(in TPair pair) => T.Difference(pair.CupGrilleGap, pair.FrontHeight);

    /// <summary>Width on which the flange rests on the cup, also where the hole is enlarged to the body.</summary>
    public static void FlangeRests<TMargins>(in TPair pair, ref TMargins margins) where TMargins : IMargins<T>
    {
        margins.Add(T.Difference(pair.Flange, pair.CupHole, 0.5));
        margins.Add(T.Difference(pair.Flange, pair.Body, 0.5));
    }

    public static T RecessMargin(in TPair pair) => T.Difference(pair.CupRecess, pair.Flange);

    public static T PlaceHoleSpare(in TPair pair) => T.Difference(pair.Hole, NeededOfPlace(pair));

    public static T LargestPlaceHoleSpare(in TPair pair) => T.Difference(pair.LargestHole, NeededOfPlace(pair));

    /// <summary>Width on which the cup stands beyond the hole in the panel.</summary>
    public static T CupOverHole(in TPair pair) => T.Difference(pair.CupOuter, pair.Hole, 0.5);

    public static T PlaceDepthSpare(in TPair pair) => T.Difference(pair.PlaceDepth, pair.IsCupMadeHere ? pair.Depth : pair.CupDepth);

    public static T PlaceGrilleSpare(in TPair pair) => T.Difference(pair.GrilleGap, pair.FrontHeight);

    private static T NeededOfPlace(in TPair pair) => pair.CupCutout.IsMissing && pair.IsCupMadeHere ? pair.Body : pair.CupCutout;
}
