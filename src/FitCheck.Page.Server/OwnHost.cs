using System.Globalization;
using Microsoft.AspNetCore.Http;

namespace FitCheck.Page.Server;

/// <summary>
/// Answers only to its own names. A foreign page can have its own name lead to this machine, but the browser then tells that name.
/// </summary>
/// <param name="port">The port, once it is known.</param>
internal sealed class OwnHost(Func<int> port)
{
    private const int UntoldPort = 80;

    public Task Passes(HttpContext context, RequestDelegate next) =>
        IsOwn(context.Request.Headers.Host.ToString(), port()) ? next(context)
            : PlainPage.Send(context, StatusCodes.Status421MisdirectedRequest, "The page answers only to the address that the program "
                + "printed.");

    private static bool IsOwn(string host, int port) => new[] { "127.0.0.1", "localhost" }.Any(name =>
        host.Equals(string.Create(CultureInfo.InvariantCulture, $"{name}:{port}"), StringComparison.OrdinalIgnoreCase)
        || (port == UntoldPort && host.Equals(name, StringComparison.OrdinalIgnoreCase)));
}

/// <summary>What is sent must come from the page itself. A browser tells where a form was filled in, also of a foreign one.</summary>
internal static class OwnOrigin
{
    public static Task Passes(HttpContext context, RequestDelegate next) =>
        !HttpMethods.IsPost(context.Request.Method)
            || context.Request.Headers.Origin.ToString().Equals($"http://{context.Request.Headers.Host}",
                StringComparison.OrdinalIgnoreCase)
            ? next(context)
            : PlainPage.Send(context, StatusCodes.Status403Forbidden, "That was not sent from the page itself.", again: true);
}

/// <summary>What may be done at all.</summary>
internal static class Methods
{
    public static Task Passes(HttpContext context, RequestDelegate next)
    {
        var method = context.Request.Method;
        return HttpMethods.IsGet(method) || HttpMethods.IsHead(method) || HttpMethods.IsPost(method) ? next(context)
            : Refuse(context, "GET, HEAD, POST");
    }

    public static Task Refuse(HttpContext context, string allowed)
    {
        context.Response.Headers.Allow = allowed;
        return PlainPage.Send(context, StatusCodes.Status405MethodNotAllowed, "The page can't be asked for that in this way.", again: true);
    }
}
