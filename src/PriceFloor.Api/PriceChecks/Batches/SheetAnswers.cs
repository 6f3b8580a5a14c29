using System.IO.Pipelines;
using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.PriceChecks.Batches;

/// <summary>A new sheet for lines that came as JSON.</summary>
public sealed class SheetAnswers(PipeWriter pipe, SheetDialect dialect, Caller caller) : BatchAnswers
{
    private readonly SheetDocument _sheet = new(pipe, dialect, ["sku", "channel", "price", .. Columns(caller).Select(SheetColumns.NameOf)]);

    public override bool IsFull => _sheet.IsFull;

    public override ValueTask FlushAsync(CancellationToken cancel) => _sheet.FlushAsync(cancel);

    public override void End() { }

    public override void Dispose()
    {
        _sheet.Dispose();
        base.Dispose();
    }

    protected override void WriteLine(BatchLine line, Outcome<CheckedPrice> outcome)
    {
        _sheet.Text(line.Request?.Sku).Text(line.Request?.Channel).Number(line.Request?.Price);
        var answer = outcome.Found?.Answer(caller, workings: false);
        _sheet.Text(answer is null ? null : KebabWords.Of(answer.Verdict)).Number(answer?.FloorPrice).Number(answer?.TargetPrice);
        _sheet.Text(answer is null ? line.InASheet(outcome.Faults) : null);
        if (caller.May(Scope.Read))
            _sheet.Number(outcome.Found is { } found ? found.Prices.Floor.UnitCost.Year.Currency.RoundUp(found.Check.ShortBy) : null);
        _sheet.EndRow();
    }

    private static IReadOnlyList<AnswerColumn> Columns(Caller caller) =>
        caller.May(Scope.Read) ? SheetColumns.ForReaders : SheetColumns.ForCheckers;
}
