using System.Buffers;
using System.IO.Pipelines;
using FluentValidation;
using Microsoft.AspNetCore.Http.Features;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Http;
using PriceFloor.Api.PriceChecks.Batches;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.OrderChecks;

/// <summary>
/// Many orders in one request, each answered in its place. All of them use the documents of one moment; an order with a fault is answered by a
/// problem and never stops the rest.
/// </summary>
internal sealed class OrderBatch(WholeCatalogue catalogue, IValidator<OrderCheckRequest> validator, Caller caller, HttpContext context, Format wanted,
    bool workings, string spillFolder, PutBy putBy)
{
    /// <summary>An order with all its items and gifts is far smaller.</summary>
    private const int MostBytes = 256 * 1024;

    private readonly CancellationToken _cancel = context.RequestAborted;

    /// <summary>An array is read whole before anything is answered: too many elements, none, or invalid JSON, is a problem of the request.</summary>
    public async Task<IResult> OfArray(byte[] body)
    {
        var lines = new List<OrderBatchLine>();
        using var reader = new JsonArrayReader(PipeReader.Create(new ReadOnlySequence<byte>(body)), mostItemBytes: MostBytes);
        while (await reader.WaitAsync(_cancel))
            while (reader.TryNext(out var item))
                lines.Add(OrderBatchLine.OfJson(item.Bytes.ToArray(), FormattableString.Invariant($"#/{item.Index}"), item.Line, item.Column,
                    validator));
        if (reader.Fault is { } fault)
            return fault.Code == InputCodes.TooMany ? Problem.Of(ProblemTypes.TooLarge,
                "A JSON array may have 1000 orders; send more as application/x-ndjson, which has no limit.") : Problem.Unreadable(fault);
        return lines.Count > 0 ? await Answer(lines)
            : Problem.Invalid([new InputError { Pointer = "#", Code = FaultCodes.Required, Detail = "The array is empty; send 1 to 1000 orders." }]);
    }

    /// <summary>One order that is to be answered as a line.</summary>
    public Task<IResult> OfOne(byte[] body) => Answer([OrderBatchLine.OfJson(body, "#", 1, 1, validator)]);

    /// <summary>Lines have no limit but the caller's patience: they are never held in memory.</summary>
    public Task<IResult> OfLines()
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
            limit.MaxRequestBodySize = null;
        return Answer(async answers =>
        {
            using var reader = new NdjsonReader(context.Request.BodyReader, MostBytes);
            while (await reader.WaitAsync(_cancel))
            {
                while (!answers.IsFull && reader.TryNext(out var line))
                    answers.Write(OrderBatchLine.Of(line, validator), catalogue);
                await answers.FlushAsync(_cancel);
            }
        });
    }

    private Task<IResult> Answer(IReadOnlyList<OrderBatchLine> lines) => Answer(async answers =>
    {
        foreach (var line in lines)
        {
            answers.Write(line, catalogue);
            if (answers.IsFull)
                await answers.FlushAsync(_cancel);
        }
    });

    private async Task<IResult> Answer(Func<OrderBatchAnswers, Task> write)
    {
        context.Response.ContentType = wanted.ContentType;
        context.Response.Headers.CacheControl = "private, no-cache";
        var pipe = new SpillingWriter(context.Response.BodyWriter, spillFolder, putBy, AnswerBlocks.Longest(context));
        await using (pipe)
        {
            using var answers = new OrderBatchAnswers(new ItemWriter(pipe, lines: wanted == Format.Ndjson), caller, context, workings);
            await write(answers);
            answers.End();
            await answers.FlushAsync(_cancel);
            await pipe.FinishAsync(_cancel);
        }

        return Results.Empty;
    }
}
