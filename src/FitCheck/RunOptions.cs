using FitCheck.Charts;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Lists;
using FitCheck.Suggestions.Searching;

namespace FitCheck;

/// <summary>What every question to a <see cref="Checker"/> may be asked with.</summary>
public abstract record RunOptions
{
    /// <summary>Told in words what goes on; null for nobody. It may be called on any thread.</summary>
    public IProgress<string>? Progress { get; init; }
}

/// <summary>How builds are checked.</summary>
public sealed record CheckOptions : RunOptions
{
    /// <summary>How many builds may be in memory at once; more of them are judged one by one, whenever they are asked for.</summary>
    internal int Most { get; init; } = int.MaxValue;
}

/// <summary>How parts are listed.</summary>
public sealed record ListOptions : RunOptions
{
    /// <summary>What the prices of the catalog say of tax, and its rate in per cent. Left out: nobody asks.</summary>
    public Tax Tax { get; init; } = Tax.NotAsked;
}

/// <summary>What is charted.</summary>
public sealed record ChartOptions : RunOptions
{
    /// <summary>The part of the chart that is wanted. Left out: all of it.</summary>
    public ChartSlice Slice { get; init; } = new();
}

/// <summary>How a seller's list becomes a build.</summary>
public sealed record ImportOptions : RunOptions
{
    /// <summary>Places that the caller knows, for parts that could go to several: `ID=POSITION,POSITION`.</summary>
    public IReadOnlyList<string> At { get; init; } = [];

    /// <summary>Which part a line of the list is, where its words leave that open: `LINE=ID`.</summary>
    public IReadOnlyList<string> As { get; init; } = [];

    /// <summary>Lines of the list that are left out, by their numbers; the build says so.</summary>
    public IReadOnlyList<int> Skip { get; init; } = [];

    /// <summary>A shop's own article numbers, a text of two columns; null for none. What is learned is in the outcome.</summary>
    internal BuildSource? Articles { get; init; }

    /// <summary>True where that file is only begun: nothing is read.</summary>
    internal bool ArticlesAreNew { get; init; }
}

/// <summary>Which changes of a build are looked for.</summary>
public record SuggestOptions : RunOptions
{
    /// <summary>Findings of this status and worse have to go. Left out: what fails.</summary>
    public Status FailOn { get; init; } = Status.Fail;

    /// <summary>Which of several answers is best. Left out: the cheapest.</summary>
    public Preference Prefer { get; init; }

    /// <summary>Ids of parts, positions, devices or outputs that stay, besides those that the build keeps.</summary>
    public IReadOnlyList<string> Keep { get; init; } = [];

    /// <summary>Only parts that need not be ordered.</summary>
    public bool CurrentOnly { get; init; }

    /// <summary>How long to search at most; then the best answer so far is given, and nothing is proved. Left out: 60 seconds.</summary>
    public TimeSpan Time { get; init; } = TimeSpan.FromSeconds(60);
}
