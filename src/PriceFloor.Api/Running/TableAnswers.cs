using System.Globalization;
using PriceFloor.Api.Pictures;
using PriceFloor.Api.PriceChecks.Batches;

namespace PriceFloor.Api.Running;

/// <summary>The answers to a sheet as a table for people, and how many there are of each in its last line.</summary>
internal sealed class TableAnswers(Stream output) : BatchAnswers
{
    private const int Block = 500;

    private readonly TextTable _table = new("Line", "Design", "Channel", "+Price", "+Floor", "+Target", "Verdict");

    public override bool IsFull => _table.Count >= Block;

    public override async ValueTask FlushAsync(CancellationToken cancel)
    {
        await using var text = QuestionCommands.TextTo(output);
        _table.WriteTo(text);
    }

    public override void End() => _table.AddLine(string.Create(CultureInfo.InvariantCulture,
        $"Meet the target: {Summary.MeetsTarget}. Below the target: {Summary.BelowTarget}. Below the floor: {Summary.BelowFloor}. "
        + $"Not checked: {Summary.Unanswered}."));

    protected override void WriteLine(BatchLine line, Outcome<PriceChecks.CheckedPrice> outcome)
    {
        var at = line.Line.ToString(CultureInfo.InvariantCulture);
        if (outcome.Found is not { } found)
        {
            _table.Add(at, line.Sku ?? "", line.Channel ?? "", "", "", "", $"not checked: {line.InASheet(outcome.Faults)}");
            return;
        }

        var money = found.Prices.Floor.UnitCost.Year.Currency.Code;
        _table.Add(at, line.Sku ?? "", line.Channel ?? "", DisplayText.Money(line.Request!.Price, money),
            DisplayText.Money(found.Prices.FloorPrice, money), DisplayText.Money(found.Prices.TargetPrice, money),
            DisplayText.Verdict(found.Verdict));
    }
}
