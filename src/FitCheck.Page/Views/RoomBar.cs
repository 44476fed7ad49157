using System.Globalization;
using FitCheck.Reports.Markup;

namespace FitCheck.Page.Views;

/// <summary>The least room of a choice as a bar from a middle line: to the right what is left, to the left what is missing.</summary>
internal static class RoomBar
{
    // mm; more room than this helps nobody.
    private const double Most = 20;
    private const double Half = 40;

    /// <param name="margin">In mm.</param>
    public static SafeHtml Draw(double margin)
    {
        var length = Math.Min(Math.Abs(margin), Most) / Most * Half;
        var from = margin < 0 ? Half - length : Half;
        var (open, part) = ($"<svg class=\"room{(margin < 0 ? " short" : "")}\" viewBox=\"0 0 80 12\" width=\"80\" height=\"12\" ",
            string.Create(CultureInfo.InvariantCulture, $"x=\"{from:0.#}\" y=\"2\" width=\"{Math.Max(1, length):0.#}\" height=\"8\""));
        return new($"""
            {open}aria-hidden="true" focusable="false"><rect class="whole" x="0" y="5" width="80" height="2"/>
            <rect class="part" {part}/><rect class="zero" x="39.5" y="0" width="1" height="12"/></svg>
            """);
    }
}
