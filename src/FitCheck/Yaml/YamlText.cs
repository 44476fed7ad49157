using System.Globalization;
using System.Text;

namespace FitCheck.Yaml;

/// <summary>Text as YAML writes it.</summary>
internal static class YamlText
{
    /// <summary>In double quotes, in which everything can be written.</summary>
    public static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (var letter in text)
        {
            quoted.Append(letter switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                '\n' => "\\n",
                '\t' => "\\t",
                _ when char.IsControl(letter) || letter is '\u2028' or '\u2029' or '\uFEFF' =>
                    "\\u" + ((int)letter).ToString("X4", CultureInfo.InvariantCulture),
                _ => letter.ToString(),
            });
        }
        return quoted.Append('"').ToString();
    }
}
