using System.IO.Pipelines;
using FluentValidation;
using Microsoft.AspNetCore.Http.Features;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Documents.Batches;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;
using PriceFloor.Api.Telemetry;

namespace PriceFloor.Api.PriceChecks.Batches;

/// <summary>
/// Many price checks in one request, each answered in its place. All of them come from the documents of one moment; a line with a fault is
/// answered by a problem and never stops the rest.
/// </summary>
public static class BatchRoutes
{
    public static async Task<IResult> Post(FromQuery<BatchQuery> query, CatalogueReader reader, IValidator<PriceCheckRequest> validator,
        Settings settings, PutBy putBy, ServiceCounts counts, HttpContext context)
    {
        if (BatchBody.Refused(context.Request) is { } refused)
            return refused;
        var given = BatchBody.FormatOf(context.Request)!;
        if (given != Format.Csv && query.Value.NamesSheetParts)
            return Problem.Invalid([new InputError
            {
                Parameter = "channel",
                Code = FaultCodes.Unexpected,
                Detail = "channel, channelColumn, skuColumn and priceColumn are for sheets; a line of JSON names its own sku, channel and price.",
            }]);
        if (putBy.IsFull)
            return Problem.Busy();
        var catalogue = reader.Whole(query.Value.AsOf);
        if (query.Value.Channel is { } channel && catalogue.Channel(channel) is null)
            return Problem.UnknownReference([new InputError
            {
                Parameter = "channel",
                Code = InputCodes.UnknownChannel,
                Detail = $"There is no channel \"{channel}\"; case counts.",
            }]);

        // A sheet goes out as a sheet, and lines as lines, where nothing else is asked for.
        var wanted = context.Request.Headers.Accept.Count == 0 || context.Request.Headers.Accept.ToString() == "*/*" ? given
            : Offers.Of(context).Wanted(context.Request)!;
        var batch = new Batch(query.Value, catalogue, validator, Caller.Of(context), context, wanted, settings.DataFolder, putBy, counts);
        return given == Format.Csv ? await batch.OfSheet() : given == Format.Ndjson ? await batch.OfLines() : await batch.OfArray(settings.BodyBytes);
    }
}

/// <summary>One batch on its way through.</summary>
internal sealed class Batch(BatchQuery query, Catalogue catalogue, IValidator<PriceCheckRequest> validator, Caller caller, HttpContext context,
    Format wanted, string spillFolder, PutBy putBy, ServiceCounts counts)
{
    private readonly bool _mayRead = caller.May(Scope.Read);
    private readonly CancellationToken _cancel = context.RequestAborted;

    /// <summary>An array is read whole before anything is answered: too many elements, or no JSON at all, is a problem of the request.</summary>
    public async Task<IResult> OfArray(int mostBytes)
    {
        if (await JsonBody<PriceCheckRequest>.ReadAllAsync(context, mostBytes) is not { } body)
            return Problem.Of(ProblemTypes.TooLarge, FormattableString.Invariant(
                $"A JSON array of checks may have {mostBytes} bytes; send more as application/x-ndjson or text/csv, which have no limit."));
        var lines = new List<BatchLine>();
        using var reader = new JsonArrayReader(PipeReader.Create(new System.Buffers.ReadOnlySequence<byte>(body)));
        while (await reader.WaitAsync(_cancel))
            while (reader.TryNext(out var item))
                lines.Add(BatchLine.OfJson(item.Bytes.ToArray(), FormattableString.Invariant($"#/{item.Index}"), item.Line, item.Column, validator));
        if (reader.Fault is { } fault)
            return fault.Code == InputCodes.TooMany ? Problem.Of(ProblemTypes.TooLarge,
                "A JSON array may hold 1000 checks; send more as application/x-ndjson or text/csv, which have no limit.") : Problem.Unreadable(fault);

        return await Answer(async answers =>
        {
            foreach (var line in lines)
                await Write(answers, line);
        });
    }

    public async Task<IResult> OfLines()
    {
        LiftBodyLimit();
        using var reader = new NdjsonReader(context.Request.BodyReader);
        return await Answer(async answers =>
        {
            while (await reader.WaitAsync(_cancel))
            {
                while (!answers.IsFull && reader.TryNext(out var line))
                    WriteNow(answers, BatchLine.Of(line, validator));
                await answers.FlushAsync(_cancel);
            }
        });
    }

    public async Task<IResult> OfSheet()
    {
        LiftBodyLimit();
        using var sheet = new SheetReader(context.Request.BodyReader, query.Dialect);
        var (header, unreadable) = await sheet.ReadHeaderAsync(_cancel);
        if (unreadable is not null)
            return Problem.Unreadable(unreadable);
        var (columns, faults) = SheetColumns.Of(header!, query.Columns, query.Dialect);
        if (columns is null)
            return Problem.Invalid(faults);
        var check = new SheetCheck(catalogue, columns, header!, query, _mayRead) { ShowsPrices = caller.May(Scope.Check) };
        return wanted == Format.Csv ? await SheetToSheet(sheet, header!, columns, check) : await Answer(async answers =>
        {
            while (await sheet.WaitAsync(_cancel))
            {
                while (!answers.IsFull && sheet.TryNext(out var row))
                    if (!row.IsBlank)
                        WriteNow(answers, check.LineOf(row));
                await answers.FlushAsync(_cancel);
            }
        });
    }

    private async Task<IResult> SheetToSheet(SheetReader sheet, SheetHeader header, SheetColumns columns, SheetCheck check)
    {
        StartAnswer();
        var pipe = new SpillingWriter(context.Response.BodyWriter, spillFolder, putBy, AnswerBlocks.Longest(context));
        await using (pipe)
        {
            using var answers = new SheetWriter(pipe, header, columns, query.Dialect);
            answers.WriteHeader();
            var summary = new BatchSummary();
            while (await sheet.WaitAsync(_cancel))
            {
                while (!answers.IsFull && sheet.TryNext(out var row))
                {
                    var (answer, verdict) = row.IsSound ? check.Check(row) : default;
                    answers.Write(row, answer);
                    summary.Count(verdict);
                }

                await answers.FlushAsync(_cancel);
            }

            await answers.FlushAsync(_cancel);
            await pipe.FinishAsync(_cancel);
            summary.AddTo(counts);
        }

        return Results.Empty;
    }

    private async Task<IResult> Answer(Func<BatchAnswers, Task> write)
    {
        StartAnswer();
        var pipe = new SpillingWriter(context.Response.BodyWriter, spillFolder, putBy, AnswerBlocks.Longest(context));
        await using (pipe)
        {
            using BatchAnswers answers = wanted == Format.Csv
                ? new SheetAnswers(pipe, query.Dialect, caller)
                : new JsonAnswers(pipe, context, lines: wanted == Format.Ndjson);
            await write(answers);
            answers.End();
            await answers.FlushAsync(_cancel);
            await pipe.FinishAsync(_cancel);
            answers.Summary.AddTo(counts);
        }

        return Results.Empty;
    }

    private async ValueTask Write(BatchAnswers answers, BatchLine line)
    {
        WriteNow(answers, line);
        if (answers.IsFull)
            await answers.FlushAsync(_cancel);
    }

    private void WriteNow(BatchAnswers answers, BatchLine line)
    {
        var outcome = line.Checked(catalogue, _mayRead);
        answers.Write(line, outcome);
    }

    private void StartAnswer()
    {
        context.Response.ContentType = wanted.ContentType;
        context.Response.Headers.CacheControl = "private, no-cache";
    }

    /// <summary>NDJSON and CSV are limited to nothing but the caller's patience: they are never held in memory.</summary>
    private void LiftBodyLimit()
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
            limit.MaxRequestBodySize = null;
    }
}
