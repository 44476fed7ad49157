namespace FitCheck.Facts.Fitting;

/// <summary>The lengths of a tweeter and its cup.</summary>
internal interface ICuppedTweeter<T> where T : ILength<T>
{
    /// <summary>Diameter of its body.</summary>
    T Body { get; }
    T Depth { get; }
    T FrontHeight { get; }
    T CupHole { get; }
    T CupOuter { get; }
    T CupDepth { get; }
    T CupGrilleGap { get; }
}

/// <summary>What a cup has to spare around a tweeter, for numbers of whatever kind.</summary>
internal static class CupFormulas<TPair, T> where T : ILength<T> where TPair : ICuppedTweeter<T>
{
    public static T HoleGap(in TPair pair) => T.Difference(pair.CupHole, pair.Body);

    /// <summary>When the hole is enlarged to the body.</summary>
    public static T WallLeft(in TPair pair) => T.Difference(pair.CupOuter, pair.Body, 0.5);

    public static T DepthMargin(in TPair pair) => T.Difference(pair.CupDepth, pair.Depth);

    public static T GrilleMargin(in TPair pair) => T.Difference(pair.CupGrilleGap, pair.FrontHeight);
}
