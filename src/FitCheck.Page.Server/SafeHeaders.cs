using Microsoft.AspNetCore.Http;
using Microsoft.Net.Http.Headers;

namespace FitCheck.Page.Server;

/// <summary>What every answer asks of the browser.</summary>
internal static class SafeHeaders
{
    // Scripts and styles of files alone; nothing goes or comes from elsewhere, and nobody puts a frame around it.
    private const string Policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; "
        + "form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    public static Task OnAll(HttpContext context, RequestDelegate next)
    {
        Set(context.Response.Headers);
        return next(context);
    }

    public static void Set(IHeaderDictionary headers)
    {
        headers[HeaderNames.ContentSecurityPolicy] = Policy;
        // Not `no-referrer`: by that a form's own origin would be told as `null`.
        headers["Referrer-Policy"] = "same-origin";
        headers[HeaderNames.XContentTypeOptions] = "nosniff";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers[HeaderNames.CacheControl] = "no-store";
    }
}
