namespace FitCheck.Page.Judging;

/// <summary>The answers that were asked for last; older ones go. Several threads may use it.</summary>
internal sealed class Recent<TKey, TValue>(int most) where TKey : notnull
{
    private readonly Lock _lock = new();
    private readonly Dictionary<TKey, LinkedListNode<(TKey Key, TValue Value)>> _known = [];
    private readonly LinkedList<(TKey Key, TValue Value)> _order = [];

    public bool TryGet(TKey key, out TValue? value)
    {
        lock (_lock)
        {
            if (!_known.TryGetValue(key, out var node))
            {
                value = default;
                return false;
            }
            _order.Remove(node);
            _order.AddFirst(node);
            value = node.Value.Value;
            return true;
        }
    }

    public void Put(TKey key, TValue value)
    {
        lock (_lock)
        {
            if (_known.Remove(key, out var before))
                _order.Remove(before);
            _known[key] = _order.AddFirst((key, value));
            if (_known.Count <= most)
                return;
            _known.Remove(_order.Last!.Value.Key);
            _order.RemoveLast();
        }
    }
}
