using FitCheck.Suggestions.Choices;

namespace FitCheck.Suggestions.Trials;

/// <summary>
/// Changes whatever their order, to look up what is known of them: slot and choice of up to four, and of more the rest in words.
/// </summary>
internal readonly record struct ChangeKey(ulong First, ulong Second, ulong Third, ulong Fourth, string? Rest)
{
    /// <summary>The key of changes, or of those only that touch something.</summary>
    public static ChangeKey Of(IReadOnlyList<Change> changes, InputSet? basis = null)
    {
        Span<ulong> all = stackalloc ulong[changes.Count];
        var count = 0;
        for (var i = 0; i < changes.Count; i++)
        {
            var change = changes[i];
            if (basis is null || basis.IsTouchedBy(change.Slot))
                all[count++] = ((ulong)(change.Slot.Index + 1) << 32) | (uint)change.Choice;
        }
        var kept = all[..count];
        kept.Sort();
        return new ChangeKey(At(kept, 0), At(kept, 1), At(kept, 2), At(kept, 3), count > 4 ? string.Join(' ', kept[4..].ToArray()) : null);
    }

    private static ulong At(ReadOnlySpan<ulong> kept, int index) => index < kept.Length ? kept[index] : 0;
}
