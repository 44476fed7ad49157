using System.Globalization;
using Microsoft.AspNetCore.Http;

namespace FitCheck.Page.Server;

/// <summary>Lets in whoever has the address, and trades its word for a cookie at once, so that the word stays in no address.</summary>
/// <param name="keys">What is let in.</param>
/// <param name="port">The port: a browser keeps one set of cookies for all ports of a machine.</param>
internal sealed class Admission(Keys keys, Func<int> port)
{
    public Task Passes(HttpContext context, RequestDelegate next)
    {
        var request = context.Request;
        var name = string.Create(CultureInfo.InvariantCulture, $"fitcheck-{port()}");
        if (!HttpMethods.IsPost(request.Method) && request.Path == "/" && request.Query.TryGetValue("token", out var words)
            && words is [{ } word] && keys.LetsIn(word))
        {
            context.Response.Cookies.Append(name, keys.Cookie,
                new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/", IsEssential = true });
            context.Response.StatusCode = StatusCodes.Status303SeeOther;
            context.Response.Headers.Location = "/";
            return Task.CompletedTask;
        }
        return request.Cookies.TryGetValue(name, out var cookie) && keys.IsCookie(cookie) ? next(context)
            : PlainPage.Send(context, StatusCodes.Status403Forbidden, "This page belongs to whoever started it. Open the whole "
                + "address that `fitcheck page` printed in its terminal, up to its last letter. If you did, go on here:", again: true);
    }
}
