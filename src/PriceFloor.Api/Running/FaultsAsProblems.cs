using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.ManyStudios;
using PriceFloor.Api.Telemetry;
using PriceFloor.Storage;
using Serilog;

namespace PriceFloor.Api.Running;

/// <summary>Answers every failure further down as a problem: exceptions, and errors that the framework leaves empty.</summary>
public static class FaultsAsProblems
{
    public static async Task Answer(HttpContext context, RequestDelegate next)
    {
        try
        {
            await next(context);
            if (context.Response is { HasStarted: false, StatusCode: >= 400, ContentType: null })
                await Filled(context);
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            // The caller has gone; there is nobody to answer.
        }
        catch (Exception e) when (context.Response.HasStarted && e is (TimeoutException or NoRoomException))
        {
            context.Abort(); // a caller who does not read its answer is disconnected; its answer is incomplete, so it asks again
        }
        catch (Exception e) when (!context.Response.HasStarted && ProblemOf(e) is { } problem)
        {
            if (problem.Type == ProblemTypes.Internal)
                context.Features.Set(new CaughtFault(e));
            else if (e is StoreTroubleException { Trouble: StoreTrouble.Damaged })
                Log.Error("The store is damaged: {Message} Stop the service, run check-store, and restore a backup", e.Message);
            else if (problem.Type == ProblemTypes.DamagedDocument)
                Log.Error("{Message} PUT it again, or run check-store and restore a backup", e.Message);
            else if (e is NoRoomException or OutOfMemoryException)
                Log.Warning("A request found no room: {Message}", e.Message);
            else if (problem.Type == ProblemTypes.Busy)
                context.RequestServices.GetRequiredService<Outages>().Tell(e.Message);
            else if (e is ArithmeticException)
                Log.Warning(e, "A figure of an answer is too large to be exact");
            context.Response.Headers.ETag = default;
            context.Response.ContentLength = null;
            await problem.ExecuteAsync(context);
        }
    }

    private static Problem ProblemOf(Exception fault) => fault switch
    {
        StoreTroubleException { Trouble: not StoreTrouble.Unexpected, MayBeKept: true } => Problem.Unknown(),
        StoreTroubleException { Trouble: not StoreTrouble.Unexpected } => Problem.Busy(),
        NoRoomException or OutOfMemoryException => Problem.Busy(),
        BadHttpRequestException { StatusCode: 413 } => Problem.Of(ProblemTypes.TooLarge),
        BadHttpRequestException bad => Problem.Unreadable(new InputError
        {
            Pointer = "#",
            Code = InputCodes.Malformed,
            Detail = $"The request broke off or is not HTTP ({bad.StatusCode}).",
        }),
        QuotaException quota => Problem.Quota(quota.What, quota.Limit, quota.Used),
        NoStudioException none => Problem.Of(ProblemTypes.NotFound, none.Message),
        StoreGoneException gone => Problem.Of(ProblemTypes.NoKey, gone.Message),
        KeyEndedException ended => Problem.Of(ProblemTypes.NoKey, ended.Message),
        DamagedDocumentException damaged => Problem.Of(ProblemTypes.DamagedDocument, damaged.Message),
        // An overflow of decimal in what an answer computes beside the model, such as a picture's scale.
        OverflowException or DivideByZeroException => Problem.Of([Fault.TooLarge]),
        _ => Problem.Of(ProblemTypes.Internal),
    };

    private static Task Filled(HttpContext context)
    {
        var response = context.Response;
        if (response.Headers.Allow is { Count: > 0 } allow && allow.ToString().Contains("GET", StringComparison.Ordinal)
                && !allow.ToString().Contains("HEAD", StringComparison.Ordinal))
            response.Headers.Allow = allow + ", HEAD";
        var type = ProblemTypes.All.FirstOrDefault(type => type.Status == response.StatusCode) ?? ProblemTypes.Internal;
        var detail = type == ProblemTypes.NotFound ? "No such address; / says where to begin, /openapi/v1.json lists the paths." : type.Meaning;
        return Problem.Of(type, detail).ExecuteAsync(context);
    }
}
