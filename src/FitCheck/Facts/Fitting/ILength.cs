namespace FitCheck.Facts.Fitting;

/// <summary>A formula as a type of its own, so that where bare numbers are worked millions of times it costs no call.</summary>
internal interface ILengthFormula
{
    /// <summary>From the inputs' values in their order; pure.</summary>
    static abstract double Of(ReadOnlySpan<double> values);

    /// <summary>
    /// True when it rises with an input, whatever the others are: for its worst case the ends of all of these are tried together.
    /// </summary>
    static abstract bool Rises(int input);
}

/// <summary>
/// A length that formulas are worked with: with all the evidence that a finding tells (<see cref="StackedLength"/>), or as bare numbers.
/// Each formula stands once, in <see cref="MountingFormulas{TPair, T, TThing}"/> and <see cref="CupFormulas{TPair, T}"/>, for both.
/// </summary>
internal interface ILength<T> where T : ILength<T>
{
    /// <summary>True when it is a figure that nobody recorded.</summary>
    bool IsMissing { get; }

    /// <summary>What is there less what is needed, times a factor (&gt; 0); the two rest on different figures.</summary>
    static abstract T Difference(in T there, in T needed, double scale = 1);

    /// <summary>A formula of several lengths and angles, each used once.</summary>
    static abstract T Of<TFormula>(ReadOnlySpan<T> inputs) where TFormula : struct, ILengthFormula;
}

/// <summary>Takes margins one by one, of which the smallest counts.</summary>
internal interface IMargins<T> where T : ILength<T>
{
    void Add(in T margin);
}

/// <summary>
/// Which of several margins is the smallest: none while one of them is unknown, unless a known one is certainly worse than nothing.
/// </summary>
internal struct LeastMargin
{
    private int _count;
    private int _at = -1;
    private double _low = double.NaN;
    private bool _isOneUnknown;
    private bool _isHit;

    public LeastMargin()
    {
    }

    /// <summary>The number of the smallest, counted from 0; -1 for none.</summary>
    public readonly int At => !_isOneUnknown || _isHit ? _at : -1;

    /// <summary>Adds one that is known; whether it is the smallest of those so far.</summary>
    public bool Add(double low, double high)
    {
        // A part that certainly hits one thing does not need the distance to another measured.
        _isHit |= high < 0;
        var isLeast = !(low >= _low);
        if (isLeast)
            (_at, _low) = (_count, low);
        _count++;
        return isLeast;
    }

    /// <summary>One that nobody knows.</summary>
    public void AddUnknown()
    {
        _isOneUnknown = true;
        _count++;
    }
}
