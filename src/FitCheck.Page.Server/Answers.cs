using System.Text;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Headers;
using Microsoft.Net.Http.Headers;

namespace FitCheck.Page.Server;

/// <summary>Asks the page, by names that it knows: nothing of a request is ever a path.</summary>
/// <param name="opening">What it is asked of; who comes early waits.</param>
/// <param name="turns">Who is answered when.</param>
/// <param name="end">Ends all work.</param>
internal sealed class Answers(Task<OpenedPage> opening, Turns turns, CancellationToken end)
{
    private const string Progress = "progress";

    private readonly Jobs _jobs = new();

    public async Task Answer(HttpContext context)
    {
        var request = context.Request;
        var name = request.Path.HasValue ? request.Path.Value[1..] : "";
        if (name == Progress)
        {
            await Tell(context);
            return;
        }
        var page = await opening.WaitAsync(context.RequestAborted);
        if (page.Assets.TryGetValue(name, out var asset))
            await Send(context, asset);
        else if (!PageEngine.Names.Contains(name))
            await PlainPage.Send(context, StatusCodes.Status404NotFound, "There is nothing of that name here.", again: true);
        else if (HttpMethods.IsPost(request.Method))
            await Ask(context, page, name);
        else if (name.Length == 0)
            await Ask(context, page, new PageRequest { Name = name, Fields = page.Start }, null);
        else
            await Methods.Refuse(context, "POST");
    }

    private static Task Send(HttpContext context, Asset asset)
    {
        if (HttpMethods.IsPost(context.Request.Method))
            return Methods.Refuse(context, "GET, HEAD");
        // Kept by the browser, which asks each time whether it is still the same: it may be another version of the program.
        context.Response.Headers.CacheControl = "no-cache";
        context.Response.Headers.ETag = asset.Tag;
        if (context.Request.Headers.IfNoneMatch.ToString().Contains(asset.Tag, StringComparison.Ordinal))
        {
            context.Response.StatusCode = StatusCodes.Status304NotModified;
            return Task.CompletedTask;
        }
        return PlainPage.Bytes(context, asset.ContentType, asset.Bytes);
    }

    private Task Tell(HttpContext context)
    {
        if (HttpMethods.IsPost(context.Request.Method))
            return Methods.Refuse(context, "GET, HEAD");
        return Jobs.Word(context.Request.Query["job"].ToString()) is { } job
            ? PlainPage.Bytes(context, "text/plain; charset=utf-8", Encoding.UTF8.GetBytes(_jobs.LastLine(job)))
            : PlainPage.Send(context, StatusCodes.Status400BadRequest, "That is not the word of a job.");
    }

    private async Task Ask(HttpContext context, OpenedPage page, string name)
    {
        var (request, refusal) = await Form.Read(context.Request, name);
        if (request is null)
        {
            await PlainPage.Send(context, refusal!.Status, refusal.Sentence, again: true);
            return;
        }
        var word = request["job"];
        if (word is { Length: > 0 } && Jobs.Word(word) is null)
            await PlainPage.Send(context, StatusCodes.Status400BadRequest, "That is not the word of a job.");
        else
            await Ask(context, page, request, string.IsNullOrEmpty(word) ? null : _jobs.Begin(word));
    }

    private async Task Ask(HttpContext context, OpenedPage page, PageRequest request, Job? job)
    {
        page.Watch.IsAsked();
        using var within = new CancellationTokenSource(Limits.Answer);
        using var cancel = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted, end, within.Token);
        try
        {
            var answer = await turns.Take(request.Name,
                () => page.Engine.Answer(request with { Progress = job }, cancel.Token), cancel.Token);
            if (answer is not null)
                await Send(context, answer);
            else
            {
                context.Response.Headers.RetryAfter = "1";
                await PlainPage.Send(context, StatusCodes.Status503ServiceUnavailable, "Too much is asked at once. Try again in a second.");
            }
        }
        catch (OperationCanceledException) when (within.IsCancellationRequested && !end.IsCancellationRequested)
        {
            context.Response.Headers.RetryAfter = "10";
            await PlainPage.Send(context, StatusCodes.Status503ServiceUnavailable,
                $"No answer was found within {Limits.Answer.TotalSeconds} seconds, so the search was given up.");
        }
        finally
        {
            job?.Dispose();
        }
    }

    private static Task Send(HttpContext context, PageAnswer answer)
    {
        context.Response.StatusCode = answer.Status;
        if (answer.SaveAs is { } name)
        {
            var saved = new ContentDispositionHeaderValue("attachment");
            saved.SetHttpFileName(name);
            context.Response.Headers.ContentDisposition = saved.ToString();
        }
        return PlainPage.Bytes(context, answer.ContentType, Encoding.UTF8.GetBytes(answer.Text));
    }
}
