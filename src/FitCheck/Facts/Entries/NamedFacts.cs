using FitCheck.Catalog;
using FitCheck.Facts.Values;

namespace FitCheck.Facts.Entries;

/// <summary>Whether another entry is, or has, what the one that names it takes for granted.</summary>
internal static class NamedFacts
{
    public static readonly FactGroup Declarations = new(Subject.Reference);

    public static readonly WordFact SetPart = Declarations.Word(
        "set_part", "The part of a driver in a set: woofer or tweeter.",
        Reads.Entry.Itself);
    public static readonly WordFact MemberName = Declarations.Word("member_name", "The id of a driver in a set.", Reads.Entry.Itself);
    public static readonly WordFact MemberType = Declarations.Word(
        "member_type", "Of what type the driver is that a set names, with its article.",
        Reads.Entry.Itself);
    public static readonly TruthFact MemberSuits = Declarations.Truth(
        "member_suits", "The tweeter of the set is a tweeter, and its woofer is not.",
        Reads.Entry.Itself);
    public static readonly WordFact ChannelName = Declarations.Word(
        "channel_name", "A factory channel that a vehicle names.",
        Reads.Entry.Itself);
    public static readonly WordFact SourceName = Declarations.Word(
        "source_name", "The id of the factory source unit.",
        Reads.Entry.Itself);
    public static readonly WordFact SourceChannels = Declarations.Word(
        "source_channels", "The channels that the factory source unit has.",
        Reads.Entry.Itself);
    public static readonly TruthFact SourceHasChannel = Declarations.Truth(
        "source_has_channel", "The factory source unit has this channel.",
        Reads.Entry.Itself);

    /// <summary>Of one reference of the entry with this id and name; none where it leads nowhere, or the other one tells nothing.</summary>
    public static IEnumerable<FactTable> Of(Reference reference, string id, string name, ICatalogIndex catalog)
    {
        var target = reference.Target.Value;
        if (reference.Kind is not ("driver" or "source-unit") || reference.Positions.Count == 0 || catalog.KindOf(target) != reference.Kind
            || catalog.PositionsOf(target) is not { Count: > 0 } there)
            yield break;
        foreach (var named in reference.Positions)
        {
            var sheet = new FactSheet();
            if (reference.Kind == "driver")
            {
                sheet.Set(SetPart, named.Value);
                sheet.Set(MemberName, target);
                sheet.Set(MemberType, PartsCatalog.Article(there[0]));
                sheet.Set(MemberSuits, FactValue.Of(there[0] == "tweeter" == (named.Value == "tweeter")) with
                {
                    Data = [new Datum($"{named.Value} of the set", named.At)],
                });
            }
            else
            {
                sheet.Set(ChannelName, named.Value);
                sheet.Set(SourceName, target);
                sheet.Set(SourceChannels, string.Join(", ", there));
                sheet.Set(SourceHasChannel, FactValue.Of(there.Contains(named.Value, StringComparer.Ordinal)) with
                {
                    Data = [new Datum($"channel {named.Value}", named.At), new Datum("factory source unit", reference.Target.At)],
                });
            }
            yield return new FactTable(Subject.Reference, id, name, sheet.Values) { At = named.At };
        }
    }
}
