using System.IO.Hashing;
using System.Text;

namespace FitCheck.Page.Views;

/// <summary>A short word that stands for a text, for the id of an element.</summary>
internal static class Mark
{
    public static string Of(params ReadOnlySpan<string> words) =>
        Convert.ToHexStringLower(XxHash64.Hash(Encoding.UTF8.GetBytes(string.Join('\0', words))));
}
