using FitCheck.Findings;

namespace FitCheck.Rules.Messages;

/// <summary>What a rule says, by status.</summary>
internal sealed class RuleMessages
{
    private readonly MessageTemplate?[] _byStatus = new MessageTemplate?[StatusWords.All.Count];

    /// <summary>The message of a status; null for one that the rule never gives.</summary>
    public MessageTemplate? this[Status status]
    {
        get => _byStatus[(int)status];
        internal set => _byStatus[(int)status] = value;
    }

    /// <summary>Every message, best status first.</summary>
    public IEnumerable<MessageTemplate> All => _byStatus.OfType<MessageTemplate>();
}
