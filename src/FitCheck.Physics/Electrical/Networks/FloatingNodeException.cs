namespace FitCheck.Physics.Electrical.Networks;

/// <summary>
/// A node of a network that no path of parts connects to ground or to the source: its voltage is undefined, so the description is at fault.
/// </summary>
internal sealed class FloatingNodeException : InvalidOperationException
{
    /// <summary>The node, and how to mend it.</summary>
    public FloatingNodeException(int node)
        : base($"Node {node} of the network is connected to neither ground nor the source. Connect a part that leads to one of them.") =>
        Node = node;

    /// <summary>Number of the node, counted from 1.</summary>
    public int Node { get; }
}
