using FitCheck.Facts.Values;
using FitCheck.Rules.Conditions.Nodes;

namespace FitCheck.Rules.Verdicts;

/// <summary>
/// The facts of one table after the other in brief, each looked up when a rule first asks for it. Not to be used on several threads at
/// once.
/// </summary>
internal sealed class BriefTable(FactScope scope)
{
    private readonly Brief[] _facts = new Brief[scope.Names.Count];
    private readonly int[] _of = new int[scope.Names.Count];
    private FactTable? _table;
    private int _count;

    /// <summary>Goes on to a table of the same subject.</summary>
    public void Turn(FactTable table)
    {
        _table = table;
        _count++;
    }

    /// <summary>
    /// The facts by their slots in the scope; of those that are not among the names and were not asked for before, nothing is meant.
    /// </summary>
    public ReadOnlySpan<Brief> With(IReadOnlyList<string> names)
    {
        for (var i = 0; i < names.Count; i++)
        {
            var slot = scope.SlotOf(names[i]);
            if (_of[slot] == _count)
                continue;
            _of[slot] = _count;
            _facts[slot] =
                _table!.Values is FactsOnDemand facts ? facts.InBrief(names[i]) : Brief.Of(_table.Values.GetValueOrDefault(names[i]));
        }
        return _facts;
    }
}
