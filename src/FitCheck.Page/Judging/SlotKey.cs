namespace FitCheck.Page.Judging;

/// <summary>Names a slot among those of a build.</summary>
internal static class SlotKey
{
    /// <summary>`driver@front-door-left+front-door-right`, as it begins the ids of its choices.</summary>
    public static string Of(ChoiceSlot slot) => $"{slot.What}@{string.Join('+', slot.Where)}";

    /// <summary>The slot's, of the id of a choice.</summary>
    public static string OfChoice(string id) => id.Split('=')[0];

    /// <summary>What it is a slot of, as a person calls it: `driver`.</summary>
    public static string WhatOf(string key) => key.Split('@')[0];

    /// <summary>The places of a slot.</summary>
    public static IReadOnlyList<string> WhereOf(string key) => key.Split('@') is [_, var where] ? where.Split('+') : [];
}
