namespace FitCheck.Tests.Rules;

/// <summary>Rule files as text.</summary>
internal static class SampleRule
{
    public const string TooDeep = """
        # yaml-language-server: $schema=../schema/rule.schema.json
        id: mount/too-deep
        title: Depth of the driver against the space behind the panel
        subject: position
        about: [driver, adapter]
        when: has_driver and not in_cup
        fact: depth_margin
        unit: mm
        warn: { below: 3 mm }
        fail: { below: 0 mm }
        message:
          pass: "{{ value }} is left behind the driver."
          warn: "Only {{ value }} is left behind the driver; {{ limit }} is wanted."
          fail: "The driver is {{ short }} too deep for {{ name }}. Add at least {{ short }} of spacer."
          measure: "Whether the driver fits is not known. Measure {{ wanted }}."
        advice: Put a spacer under the driver, or choose a flatter one.
        why: A magnet that touches the glass or the frame can't be mounted, or breaks the window.
        source: { title: "common practice, no source" }
        caution: Wind the glass down before anything is screwed in.
        examples:
          - { name: comfortable, given: 8 mm, expect: pass }
          - { name: on the warning limit, given: 3 mm, expect: pass }
          - { name: close, given: 1 mm, expect: warn }
          - { name: touching, given: 0 mm, expect: warn }
          - { name: could be either, given: { low: -1 mm, value: 1 mm, high: 3 mm }, expect: warn }
          - { name: too deep, given: -4 mm, expect: fail }
          - { name: guessed, given: { value: 8 mm, estimated: true }, expect: measure }
          - { name: not recorded, given: unknown, expect: measure }
          - { name: by facts, facts: { has_driver: true, in_cup: false, depth_margin: -1 mm }, expect: fail }
          - { name: not asked, facts: { has_driver: false }, expect: none }

        """;

    /// <summary>A rule about any expression, with these limits and no condition.</summary>
    public static string About(string fact, string warn, string fail, string unit = "mm") => $$$"""
        id: mount/too-deep
        title: Sample
        subject: position
        fact: {{{fact}}}
        {{{(unit.Length > 0 ? "unit: " + unit : "")}}}
        warn: {{{warn}}}
        fail: {{{fail}}}
        message:
          pass: "Fine, {{ value }}."
        {{{(warn == "never" ? "" : "  warn: \"Doubtful, {{ value }} against {{ limit }}, {{ margin }}.\"")}}}
        {{{(fail == "never" ? "" : "  fail: \"Wrong, {{ value }} against {{ limit }}, {{ margin }}.\"")}}}
          measure: "Measure {{ wanted }}."
        advice: Do it.
        why: Because.
        source: { title: none }
        examples: []
        """;
}
