namespace FitCheck.Finds;

/// <summary>Something that can be looked for: a part, a vehicle, a place in one, a rule.</summary>
/// <param name="Id">Its id; of a place `VEHICLE/POSITION`.</param>
/// <param name="Kind">`driver`, `vehicle`, `place`, `rule`.</param>
/// <param name="Name">As people read it.</param>
/// <param name="Price">Of a pack; null for what has none.</param>
/// <param name="Words">What it is found by besides id, kind and name: its type and size, what it fits.</param>
/// <param name="File">Where it stands.</param>
internal sealed record Thing(string Id, string Kind, string Name, Catalog.Money? Price, IReadOnlyList<string> Words, string File);
