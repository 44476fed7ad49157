using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.Suggestions;

/// <summary>What changes in a file is what was asked for, and nothing else.</summary>
public sealed class YamlEditorTests
{
    private const string Text = """
        # kept
        fit:
          - at: [left, right]  # both
            driver: one
            with: [tape, ring]
          - at: [sub]
            box: 40 L  # from the net

        channels:
          - {id: a, output: amp.1, feeds: [left]}  # kept too
        """;

    [Fact]
    public void A_scalar_is_replaced_in_its_place() =>
        Edited((e, r) => e.Replace((YamlScalar)Fit(r, 0)["driver"]!, "two"), "    driver: one", "    driver: two");

    [Fact]
    public void A_key_comes_behind_the_last_one_of_a_block() =>
        Edited((e, r) => e.AddKey(Fit(r, 1), "driver", "three"), "    box: 40 L  # from the net",
            "    box: 40 L  # from the net\n    driver: three");

    [Fact]
    public void A_key_comes_before_the_bracket() =>
        Edited((e, r) => e.AddKey(Channel(r), "limit", "50 W"), "feeds: [left]}", "feeds: [left], limit: 50 W}");

    [Fact]
    public void A_key_is_taken_out_of_a_block() => Edited((e, r) => e.RemoveKey(Fit(r, 0), "driver"), "    driver: one\n", "");

    [Fact]
    public void The_first_key_of_an_item_leaves_its_dash() =>
        Edited((e, r) => e.RemoveKey(Fit(r, 1), "at"), "  - at: [sub]\n    box", "  - box");

    [Fact]
    public void A_key_is_taken_out_of_brackets() => Edited((e, r) => e.RemoveKey(Channel(r), "output"), " output: amp.1,", "");

    [Fact]
    public void An_item_comes_behind_the_last_one_in_brackets() =>
        Edited((e, r) => e.AddItem((YamlList)Fit(r, 0)["with"]!, "pad"), "[tape, ring]", "[tape, ring, pad]");

    [Fact]
    public void An_item_of_several_lines_is_indented_with_the_list() =>
        Edited((e, r) => e.AddItem((YamlList)((YamlMap)r)["fit"]!, "at: [left]\ncup: small"), "    box: 40 L  # from the net\n",
            "    box: 40 L  # from the net\n  - at: [left]\n    cup: small\n");

    [Fact]
    public void An_item_is_taken_out_of_brackets() =>
        Edited((e, r) => e.RemoveItems((YamlList)Fit(r, 0)["with"]!, new HashSet<int> { 0 }).Single(), "[tape, ring]", "[ring]");

    [Theory]
    [InlineData("[a, b, c]", "[c]", "0 1")]
    [InlineData("[a, b, c]", "[a]", "1 2")]
    [InlineData("[a, b, c]", "[b]", "0 2")]
    [InlineData("[a, b, c]", "[]", "0 1 2")]
    public void Items_that_go_leave_no_comma_behind(string list, string rest, string indices)
    {
        var text = $"with: {list}\n";
        Assert.Equal($"with: {rest}\n",
            TextEdit.Apply(text,
                new YamlEditor(text).RemoveItems((YamlList)((YamlMap)Read(text))["with"]!,
                    indices.Split(' ').Select(int.Parse).ToHashSet())));
    }

    [Fact]
    public void What_ends_at_one_place_is_added_from_the_inside_out()
    {
        // The driver's entry is the last of `fit` and `fit` the last of the document: whatever the order of the edits, the harness is the
        // driver's, and the radio a further entry's.
        const string text = "kind: build\nfit:\n  - at: [a]\n    driver: one\n";
        var editor = new YamlEditor(text);
        var fit = (YamlList)((YamlMap)Read(text))["fit"]!;

        var changed = TextEdit.Apply(text,
            [editor.AddUnder("extras", "x"), editor.AddItem(fit, "at: [b]\ncup: c"), editor.AddKey((YamlMap)fit.Items[0], "harness", "h")]);

        Assert.Equal("kind: build\nfit:\n  - at: [a]\n    driver: one\n    harness: h\n  - at: [b]\n    cup: c\n\nextras:\n  - x\n",
            changed);
    }

    [Theory]
    [InlineData("fit:\n  - at: [a]\n    driver: one\n", "fit:\n  - at: [a]\n    driver: one\n    with: [tape, ring]\n")]
    [InlineData("fit: [{at: [a], driver: one}]\n", "fit: [{at: [a], driver: one, with: [tape, ring]}]\n")]
    public void Two_items_share_a_list_that_was_not_there(string text, string expected)
    {
        var editor = new YamlEditor(text);
        Assert.Equal(expected,
            TextEdit.Apply(text,
                [editor.AddListed(Fit(Read(text), 0), "with", "tape"), editor.AddListed(Fit(Read(text), 0), "with", "ring")]));
    }

    [Fact]
    public void Two_items_come_into_empty_brackets()
    {
        const string text = "with: []\n";
        var list = (YamlList)((YamlMap)Read(text))["with"]!;
        Assert.Equal("with: [tape, ring]\n",
            TextEdit.Apply(text, [new YamlEditor(text).AddItem(list, "tape"), new YamlEditor(text).AddItem(list, "ring")]));
    }

    [Fact]
    public void A_mapping_comes_into_brackets_in_braces()
    {
        const string text = "fit: [{at: [a]}]\n";
        Assert.Equal("fit: [{at: [a]}, {at: [b], cup: c}]\n",
            TextEdit.Apply(text, [new YamlEditor(text).AddItem((YamlList)((YamlMap)Read(text))["fit"]!, "at: [b]\ncup: c")]));
    }

    [Fact]
    public void A_key_and_its_value_are_replaced_together() =>
        Edited((e, r) => e.Replace(Fit(r, 0), "driver", "set", "two"), "    driver: one", "    set: two");

    [Fact]
    public void Two_items_come_under_one_new_key()
    {
        var editor = new YamlEditor(Text);
        Assert.Equal(Text + "\n\nextras:\n  - one\n  - two",
            TextEdit.Apply(Text, [editor.AddUnder("extras", "one"), editor.AddUnder("extras", "two")]));
    }

    [Fact]
    public void Writing_into_what_is_taken_out_is_refused()
    {
        var editor = new YamlEditor(Text);
        var driver = (YamlScalar)Fit(Read(Text), 0)["driver"]!;
        Assert.Null(TextEdit.Apply(Text, [editor.RemoveKey(Fit(Read(Text), 0), "driver"), editor.Replace(driver, "two")]));
    }

    [Fact]
    public void Line_ends_of_a_file_stay_what_they_are()
    {
        var text = Text.Replace("\n", "\r\n", StringComparison.Ordinal);
        var changed = TextEdit.Apply(text, [new YamlEditor(text).AddKey(Fit(Read(text), 0), "cup", "small")])!;
        Assert.Equal(text.Replace("with: [tape, ring]\r\n", "with: [tape, ring]\r\n    cup: small\r\n", StringComparison.Ordinal), changed);
    }

    private static void Edited(Func<YamlEditor, YamlNode, TextEdit> edit, string before, string after)
    {
        var changed = TextEdit.Apply(Text, [edit(new YamlEditor(Text), Read(Text))]);
        Assert.Contains(before, Text, StringComparison.Ordinal);
        Assert.Equal(Text.Replace(before, after, StringComparison.Ordinal), changed);
    }

    private static YamlNode Read(string text) => YamlReader.Read(new SourceText("x.yaml", text), new ProblemList())!;

    private static YamlMap Fit(YamlNode root, int item) => (YamlMap)((YamlList)((YamlMap)root)["fit"]!).Items[item];

    private static YamlMap Channel(YamlNode root) => (YamlMap)((YamlList)((YamlMap)root)["channels"]!).Items[0];
}
