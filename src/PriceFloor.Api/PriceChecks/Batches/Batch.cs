using System.IO.Pipelines;
using FluentValidation;
using Microsoft.AspNetCore.Http.Features;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;
using PriceFloor.Api.Telemetry;

namespace PriceFloor.Api.PriceChecks.Batches;

/// <summary>One batch while it is answered.</summary>
internal sealed class Batch(BatchQuery query, Catalogue catalogue, IValidator<PriceCheckRequest> validator, Caller caller, HttpContext context,
    Format wanted, string spillFolder, PutBy putBy, ServiceCounts counts)
{
    private readonly bool _mayRead = caller.May(Scope.Read);
    private readonly CancellationToken _cancel = context.RequestAborted;

    /// <summary>An array is read whole before anything is answered: too many elements, or invalid JSON, is a problem of the request.</summary>
    public async Task<IResult> OfArray(int mostBytes)
    {
        if (await RequestBytes.ReadAllAsync(context, mostBytes) is not { } body)
            return Problem.Of(ProblemTypes.TooLarge, FormattableString.Invariant(
                $"A JSON array of checks may have {mostBytes} bytes; send more as application/x-ndjson or text/csv, which have no limit."));
        var lines = new List<BatchLine>();
        using var reader = new JsonArrayReader(PipeReader.Create(new System.Buffers.ReadOnlySequence<byte>(body)));
        while (await reader.WaitAsync(_cancel))
            while (reader.TryNext(out var item))
                lines.Add(BatchLine.OfJson(item.Bytes.ToArray(), FormattableString.Invariant($"#/{item.Index}"), item.Line, item.Column, validator));
        if (reader.Fault is { } fault)
            return fault.Code == InputCodes.TooMany ? Problem.Of(ProblemTypes.TooLarge,
                "A JSON array may have 1000 checks; send more as application/x-ndjson or text/csv, which have no limit.") : Problem.Unreadable(fault);

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
        var (columns, faults) = SheetColumns.Of(header!, query.Columns, query.Dialect, _mayRead);
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

    /// <summary>NDJSON and CSV have no limit but the caller's patience: they are never held in memory.</summary>
    private void LiftBodyLimit()
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
            limit.MaxRequestBodySize = null;
    }
}
