using FitCheck.Findings;

namespace FitCheck.Suggestions.Searching;

/// <summary>Which of two answers is the better one for a goal; equal only for the same changes.</summary>
internal sealed class AnswerOrder(Goal goal) : IComparer<Answer>
{
    private readonly IReadOnlyList<Func<Answer, double>> _measures = [.. Measures(goal)];

    public int Compare(Answer? x, Answer? y)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        var order = goal.IsAddedTo(x.Assessment).CompareTo(goal.IsAddedTo(y.Assessment));
        if (order == 0)
            order = x.Voices.CompareTo(y.Voices);
        foreach (var measure in _measures)
        {
            if (order != 0)
                return order;
            order = measure(x).CompareTo(measure(y));
        }
        return order != 0 ? order : string.CompareOrdinal(x.Words, y.Words);
    }

    private static IEnumerable<Func<Answer, double>> Measures(Goal goal)
    {
        Func<Answer, double> price = a => (double)a.Assessment.Price, changes = a => a.Changes.Count, work = a =>
            a.Assessment.Work, margin = a => -a.Assessment.LeastClearance;
        IEnumerable<Func<Answer, double>> first = goal.Prefer switch
        {
            Preference.Changes => [changes, price],
            Preference.Work => [work, price, changes],
            Preference.Margin => [margin, price, changes],
            _ => [price, changes],
        };
        return [.. first, a => goal.Opened(a.Assessment), a => a.Assessment.Count(Status.Warn), work, a => a.Rank, margin];
    }
}
