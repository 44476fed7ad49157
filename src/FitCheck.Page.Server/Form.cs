using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.WebUtilities;

namespace FitCheck.Page.Server;

/// <summary>Why a form is not taken.</summary>
internal sealed record FormRefusal(int Status, string Sentence);

/// <summary>Reads a form that was sent, in memory alone: no file of anybody comes to lie on the disk.</summary>
internal static class Form
{
    private static readonly FormOptions Bounds = new()
    {
        BufferBody = false,
        // What is larger would be kept in a file.
        MemoryBufferThreshold = Limits.BodyBytes + 1,
        BufferBodyLengthLimit = Limits.BodyBytes + 1,
        MultipartBodyLengthLimit = Limits.BodyBytes + 1,
        ValueLengthLimit = Limits.BodyBytes,
        ValueCountLimit = Limits.Fields + Limits.Files,
        KeyLengthLimit = Limits.FieldNameBytes,
        MultipartHeadersCountLimit = 8,
        MultipartHeadersLengthLimit = 4 << 10,
    };

    public static async Task<(PageRequest? Request, FormRefusal? Refusal)> Read(HttpRequest request, string name)
    {
        if (!request.HasFormContentType)
            return Refused(StatusCodes.Status415UnsupportedMediaType, "The page takes what its own forms send, and nothing else.");
        IFormCollection form;
        try
        {
            form = await request.ReadFormAsync(Bounds, request.HttpContext.RequestAborted);
        }
        catch (Exception e) when (e is InvalidDataException or IOException and not BadHttpRequestException)
        {
            return Refused(StatusCodes.Status400BadRequest, "That form is broken, or has more fields than the page has.");
        }
        if (form.Sum(f => f.Value.Count) > Limits.Fields || form.Files.Count > Limits.Files)
            return Refused(StatusCodes.Status400BadRequest, "That form has more fields or files than the page has.");
        if (form.Files.Any(f => f.Length > Limits.FileBytes))
            return Refused(StatusCodes.Status413PayloadTooLarge, $"A file may have up to {Limits.FileBytes} bytes.");
        return (new PageRequest
        {
            Name = name,
            Fields = [.. form.SelectMany(f => f.Value.Select(v => KeyValuePair.Create(f.Key, v ?? "")))],
            Files = [.. form.Files.Where(IsGiven).Select(File)],
            IsPart = request.Headers["HX-Request"] == "true",
        }, null);
    }

    private static (PageRequest?, FormRefusal?) Refused(int status, string sentence) => (null, new FormRefusal(status, sentence));

    // A browser sends an empty one for a field in which nobody chose any.
    private static bool IsGiven(IFormFile file) => file.FileName.Length > 0 || file.Length > 0;

    // The name alone, also of a browser that tells the folder.
    private static PageFile File(IFormFile file)
    {
        using var bytes = new MemoryStream((int)file.Length);
        file.CopyTo(bytes);
        return new PageFile(file.Name, file.FileName[(file.FileName.LastIndexOfAny(['/', '\\']) + 1)..], bytes.ToArray());
    }
}
