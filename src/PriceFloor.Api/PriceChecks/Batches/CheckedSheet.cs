using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Http;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.PriceChecks.Batches;

/// <summary>A sheet of prices while its rows are checked: the same for a request and for the verb of the program.</summary>
internal sealed class CheckedSheet
{
    private readonly SheetReader _rows;
    private readonly SheetHeader _header;
    private readonly SheetColumns _columns;
    private readonly SheetCheck _check;
    private readonly SheetDialect _dialect;

    private CheckedSheet(SheetReader rows, SheetHeader header, SheetColumns columns, SheetCheck check, SheetDialect dialect) =>
        (_rows, _header, _columns, _check, _dialect) = (rows, header, columns, check, dialect);

    /// <summary>Reads the header; a problem if the sheet is not one, or lacks a column.</summary>
    public static async Task<(CheckedSheet? Sheet, Problem? Problem)> Begin(SheetReader rows, BatchQuery query, Catalogue catalogue, bool mayRead,
        bool showsPrices, CancellationToken cancel)
    {
        var (header, unreadable) = await rows.ReadHeaderAsync(cancel);
        if (unreadable is not null)
            return (null, Problem.Unreadable(unreadable));
        var (columns, faults) = SheetColumns.Of(header!, query.Columns, query.Dialect, mayRead);
        if (columns is null)
            return (null, Problem.Invalid(faults));
        var check = new SheetCheck(catalogue, columns, header!, query, mayRead) { ShowsPrices = showsPrices };
        return (new CheckedSheet(rows, header!, columns, check, query.Dialect), null);
    }

    /// <summary>Answers with the sheet itself and our columns.</summary>
    public async Task AnswerAsSheet(System.IO.Pipelines.PipeWriter pipe, BatchSummary summary, CancellationToken cancel)
    {
        using var answers = new SheetWriter(pipe, _header, _columns, _dialect);
        answers.WriteHeader();
        while (await _rows.WaitAsync(cancel))
        {
            while (!answers.IsFull && _rows.TryNext(out var row))
            {
                var (answer, verdict) = row.IsSound ? _check.Check(row) : default;
                answers.Write(row, answer);
                summary.Count(verdict);
            }

            await answers.FlushAsync(cancel);
        }

        await answers.FlushAsync(cancel);
    }

    /// <summary>Hands out each row that is not blank.</summary>
    /// <param name="answers">Takes the answers.</param>
    /// <param name="write">Writes the answer to a row.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task Answer(BatchAnswers answers, Action<BatchAnswers, BatchLine> write, CancellationToken cancel)
    {
        while (await _rows.WaitAsync(cancel))
        {
            while (!answers.IsFull && _rows.TryNext(out var row))
                if (!row.IsBlank)
                    write(answers, _check.LineOf(row));
            await answers.FlushAsync(cancel);
        }
    }
}
