using FitCheck.Page.Acting;

namespace FitCheck.Page;

/// <summary>A request as actions see it.</summary>
internal sealed class PageForm(PageRequest request) : IForm
{
    public string? Field(string name) => request[name];

    public IEnumerable<KeyValuePair<string, string>> Fields(string beginning) =>
        request.Fields.Where(f => f.Key.StartsWith(beginning, StringComparison.Ordinal));

    public (string Name, byte[] Bytes)? File(string field) =>
        request.Files.LastOrDefault(f => f.Field == field) is { Bytes.Length: > 0 } file ? (file.FileName, file.Bytes) : null;
}
