using FluentValidation;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Documents.Batches;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.OrderChecks;

/// <summary>One order, an array of them, or lines of them: all at one address.</summary>
public static class OrderCheckRoutes
{
    public static async Task<IResult> Post(FromQuery<ComputeQuery> query, CatalogueReader reader, IValidator<OrderCheckRequest> validator,
        Settings settings, PutBy putBy, BatchSlots slots, HttpContext context)
    {
        if (Refused(context) is { } refused)
            return refused;
        var (caller, (asOf, workings)) = (Caller.Of(context), query.Value);
        if (workings && !caller.May(Scope.Read))
            return Problem.Of(ProblemTypes.KeyNotAllowed, "Workings reveal costs; they need a key with the scope \"read\".");
        var isLines = BatchBody.FormatOf(context.Request) == Format.Ndjson;
        var body = isLines ? null : await RequestBytes.ReadAllAsync(context, settings.BodyBytes);
        if (!isLines && body is null)
            return Problem.Of(ProblemTypes.TooLarge, FormattableString.Invariant(
                $"A JSON body of orders may have {settings.BodyBytes} bytes; send more as application/x-ndjson, which has no limit."));
        var wanted = Wanted(context, isLines);
        if (body is not null && !IsArray(body) && wanted == Format.Json)
            return await One(body, asOf, workings, reader, validator, caller, context);
        return (IResult)(await slots.WhileRunning(context, async () =>
        {
            if (putBy.IsFull)
                return Problem.Busy();
            var batch = new OrderBatch(await reader.Whole(asOf), validator, caller, context, wanted, workings, settings.DataFolder, putBy);
            return body is null ? await batch.OfLines() : IsArray(body) ? await batch.OfArray(body) : await batch.OfOne(body);
        }))!;
    }

    private static async ValueTask<IResult> One(byte[] body, DateTimeOffset? asOf, bool workings, CatalogueReader reader,
        IValidator<OrderCheckRequest> validator, Caller caller, HttpContext context)
    {
        var request = JsonBody<OrderCheckRequest>.Read(body, validator);
        if (request.Found is not { } asked)
            return Problem.Of(request.Faults);
        Answers.ForThisCallerOnly(context);
        return await reader.Read<IResult>(asOf, catalogue =>
        {
            var order = CheckedOrder.Of(catalogue, asked, Place.Body, caller.May(Scope.Read));
            return order.Found is { } found ? JsonAnswer.Of(found.Answer(caller, workings)) : Problem.Of(order.Faults);
        });
    }

    private static Problem? Refused(HttpContext context)
    {
        if (ContentCoding.Against(context.Request) is { } coded)
            return coded;
        var format = BatchBody.FormatOf(context.Request);
        return format == Format.Json || format == Format.Ndjson ? null
            : Problem.Of(ProblemTypes.MediaType, "Send application/json (one order or an array of them) or application/x-ndjson, as UTF-8.");
    }

    /// <summary>Lines are answered as lines and JSON as JSON, unless Accept asks for the other.</summary>
    private static Format Wanted(HttpContext context, bool isLines)
    {
        var accept = context.Request.Headers.Accept;
        return accept.Count == 0 || accept == "*/*"
            ? isLines ? Format.Ndjson : Format.Json
            : Offers.Of(context).Wanted(context.Request)!;
    }

    private static bool IsArray(byte[] body)
    {
        var text = JsonText.WithoutMark(body).Span;
        var start = text.IndexOfAnyExcept(" \t\r\n"u8);
        return start >= 0 && text[start] == '[';
    }
}
