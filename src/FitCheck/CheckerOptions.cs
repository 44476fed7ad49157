using FitCheck.Evaluation;
using FitCheck.Foundation;

namespace FitCheck;

/// <summary>What a <see cref="Checker"/> opens, and what it may remember.</summary>
public sealed record CheckerOptions
{
    /// <summary>Folders of catalogs; later ones overlay earlier ones by id. Left out: `catalog/` beside the program.</summary>
    public IReadOnlyList<string> Catalogs { get; init; } = Folders.BesideProgram.Catalog;

    /// <summary>Folders of rules; later ones overlay earlier ones. Left out: `rules/` beside the program.</summary>
    public IReadOnlyList<string> Rules { get; init; } = Folders.BesideProgram.Rules;

    /// <summary>
    /// Where it is remembered which inputs were found valid, so that the same bytes open sooner the next time. Left out: nowhere.
    /// </summary>
    public ValidationCache Cache { get; init; } = ValidationCache.Nothing;

    /// <summary>
    /// The day by which the end of a waiver is judged; it holds on that day too. Null, and left out: today's date, UTC, at each question.
    /// </summary>
    public DateOnly? Today { get; init; }

    /// <summary>Told in words what is being opened; null for nobody. It may be called on any thread.</summary>
    public IProgress<string>? Progress { get; init; }

    /// <summary>
    /// Whether every entry is kept as it was read: whoever asks once needs a few, whoever stays open has fewer to read again.
    /// </summary>
    internal bool KeepsEntries { get; init; } = true;

    internal static CheckerOptions Of(Folders folders, ValidationCache cache, IProgress<string>? progress) =>
        new() { Catalogs = folders.Catalog, Rules = folders.Rules, Cache = cache, Progress = progress };
}
