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

    /// <summary>Keys of the listed prices at which pieces are sold off.</summary>
    public required IReadOnlySet<string> Clearing { get; init; }

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
        using var rows = new SheetReader(context.Request.BodyReader, query.Dialect);
        var (sheet, problem) = await CheckedSheet.Begin(rows, query, catalogue, _mayRead, caller.May(Scope.Check), _cancel);
        return sheet is null ? problem!
            : wanted == Format.Csv ? await SheetToSheet(sheet)
            : await Answer(answers => sheet.Answer(answers, WriteNow, _cancel));
    }

    private async Task<IResult> SheetToSheet(CheckedSheet sheet)
    {
        StartAnswer();
        var pipe = new SpillingWriter(context.Response.BodyWriter, spillFolder, putBy, AnswerBlocks.Longest(context));
        await using (pipe)
        {
            var summary = new BatchSummary();
            await sheet.AnswerAsSheet(pipe, summary, _cancel);
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
                : new JsonAnswers(pipe, context, lines: wanted == Format.Ndjson) { Clearing = Clearing };
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
