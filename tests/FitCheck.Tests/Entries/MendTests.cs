using System.Text;
using FitCheck.Fixes;
using Xunit;

namespace FitCheck.Tests.Entries;

public sealed class MendTests
{
    private static readonly string[] Order = ["id", "kind", "name", "impedance", "sensitivity", "dimensions"];

    [Fact]
    public void Units_are_spelled_and_all_other_bytes_stay() => Assert.Equal(
        ("id: a  # ours\nimpedance: 4 ohm  # Ohms as printed\ndimensions: {flange: 65 mm,cutout:   \"55 mm\"}\n",
            "2:12 `4 Ohms` spelled `4 ohm`; 3:22 `65mm` spelled `65 mm`; 3:37 `55 millimetres` spelled `55 mm`"),
        Mended("id: a  # ours\nimpedance: 4 Ohms  # Ohms as printed\ndimensions: {flange: 65mm,cutout:   \"55 millimetres\"}\n"));

    [Fact]
    public void Words_that_are_no_quantities_stay() =>
        Assert.Equal(("id: a\nname: 4 Ohms\nnotes: 90dB @1W/1m\n", ""), Mended("id: a\nname: 4 Ohms\nnotes: 90dB @1W/1m\n"));

    [Fact]
    public void Spaces_at_line_ends_go_but_not_inside_a_text()
    {
        const string text = "id: a \nnotes: |\n  two spaces  \n  end\n";
        Assert.Equal(("id: a\nnotes: |\n  two spaces  \n  end\n", "1:6 spaces at the end of the line taken off"), Mended(text));
    }

    [Fact]
    public void The_last_line_is_ended_as_the_first() =>
        Assert.Equal(("id: a\r\nkind: driver\r\n", "2:13 the last line ended"), Mended("id: a\r\nkind: driver"));

    [Fact]
    public void A_text_that_would_gain_a_line_end_stays() => Assert.Equal(("id: a\nnotes: |\n  end", ""), Mended("id: a\nnotes: |\n  end"));

    [Fact]
    public void Keys_move_with_their_lines_and_the_comments_above_them() => Assert.Equal(
        ("# head\nid: a\nkind: driver\n# as sold\nname: A\nnotes: behind the name\ndimensions:\n  flange: 65 mm\n",
            "3:1 `dimensions` moved to its place among the keys"),
        Mended("# head\nid: a\ndimensions:\n  flange: 65 mm\nkind: driver\n# as sold\nname: A\nnotes: behind the name\n"));

    [Theory]
    [InlineData("name: A\n\nid: a\n")] // an empty line divides it
    [InlineData("# of the name\nname: A\nid: a\n")] // about the file, or about the name
    [InlineData("name: A\nid: a\n...\n")]
    [InlineData("{name: A, id: a}\n")]
    [InlineData("name: &n A\nid: *n\n")] // the alias would come before its anchor
    public void An_order_that_is_not_plainly_a_slip_stays(string text) => Assert.Equal((text, ""), Mended(text));

    [Theory]
    [InlineData("id: a \n\tkind: driver \n")]
    [InlineData("id: a \nid: b \n")]
    [InlineData("id: a\u2028kind: driver \n")] // YAML sees a line end where an editor sees none
    [InlineData("id: a \rkind: driver \r")]
    [InlineData("")]
    public void What_cannot_be_read_is_left_alone(string text) => Assert.Equal((text, ""), Mended(text));

    [Fact]
    public void An_order_mark_and_binary_are_kept()
    {
        byte[] mark = [0xEF, 0xBB, 0xBF];
        Assert.Equal([.. mark, .. "id: a\n"u8], Mend.Of("f", [.. mark, .. "id: a \n"u8], "driver", Order).Bytes);
        byte[] binary = [0, 1, 2];
        Assert.Same(binary, Mend.Of("f", binary, "driver", Order).Bytes);
    }

    [Fact]
    public void An_anchor_whose_alias_would_change_too_is_left_alone() =>
        Assert.Equal(("impedance: &z 4 Ohms\nname: *z\n", ""), Mended("impedance: &z 4 Ohms\nname: *z\n"));

    private static (string Text, string Told) Mended(string text)
    {
        var mended = Mend.Of("f", Encoding.UTF8.GetBytes(text), "driver", Order);
        return (Encoding.UTF8.GetString(mended.Bytes), string.Join("; ", mended.Edits.Select(e => $"{e.At.Line}:{e.At.Column} {e.What}")));
    }
}
