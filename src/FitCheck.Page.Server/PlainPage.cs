using System.Net;
using System.Text;
using Microsoft.AspNetCore.Http;

namespace FitCheck.Page.Server;

/// <summary>A page of one sentence, for what is refused or went wrong.</summary>
internal static class PlainPage
{
    /// <summary>Sends it.</summary>
    /// <param name="context">The request.</param>
    /// <param name="status">As HTTP counts.</param>
    /// <param name="sentence">What is to be known.</param>
    /// <param name="again">Whether it leads to the page.</param>
    public static Task Send(HttpContext context, int status, string sentence, bool again = false)
    {
        var back = again ? "<p><a href=\"/\">Open the page</a></p>" : "";
        var page = $"<!DOCTYPE html>\n<html lang=\"en\">\n<meta charset=\"utf-8\">\n"
            + $"<meta name=\"viewport\" content=\"width=device-width\">\n<title>FitCheck</title>\n"
            + $"<main><h1>FitCheck</h1><p>{WebUtility.HtmlEncode(sentence)}</p>{back}</main>\n</html>\n";
        context.Response.StatusCode = status;
        return Bytes(context, "text/html; charset=utf-8", Encoding.UTF8.GetBytes(page));
    }

    /// <summary>Sends bytes, or to who asks for the head alone how many there are.</summary>
    public static Task Bytes(HttpContext context, string type, byte[] bytes)
    {
        context.Response.ContentType = type;
        context.Response.ContentLength = bytes.Length;
        return HttpMethods.IsHead(context.Request.Method) ? Task.CompletedTask
            : context.Response.Body.WriteAsync(bytes, context.RequestAborted).AsTask();
    }

    /// <summary>Whatever went wrong behind it is told in a sentence, never as a trace; a browser that went is told nothing.</summary>
    public static Func<HttpContext, RequestDelegate, Task> Defects(CancellationToken end) => async (context, next) =>
    {
        try
        {
            await next(context);
        }
        catch (Exception) when (context.RequestAborted.IsCancellationRequested || end.IsCancellationRequested)
        {
            context.Abort();
        }
        catch (BadHttpRequestException e) when (!context.Response.HasStarted)
        {
            await Send(context, e.StatusCode, e.StatusCode == StatusCodes.Status413PayloadTooLarge
                ? $"That is more than the {Limits.BodyBytes >> 20} MB that the page takes at once."
                : "The page was asked in a way that it does not understand.", again: true);
        }
        catch (Exception e) when (!context.Response.HasStarted)
        {
            Terminal.Tell($"fitcheck: a defect of FitCheck, not of your input: {e.GetType().Name} "
                + $"{e.StackTrace?.Split('\n')[0].Trim() ?? "at an unknown place"}. Please report this line with what you did.");
            context.Response.Headers.Clear();
            SafeHeaders.Set(context.Response.Headers);
            await Send(context, StatusCodes.Status500InternalServerError, "This went wrong by a defect of FitCheck; the terminal in which "
                + "it runs says where. What you have put together is still in your browser.", again: true);
        }
    };
}
