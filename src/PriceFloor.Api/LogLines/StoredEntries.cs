using System.Buffers.Binary;
using PriceFloor.Evidence.Lines;
using PriceFloor.Storage;

namespace PriceFloor.Api.LogLines;

/// <summary>Lines of the store as evidence reads them: amounts in their currency, days, ids that can only be compared.</summary>
internal static class StoredEntries
{
    private const decimal Hundredths = 100;

    public static Movement Of(MovementLine line)
    {
        var currency = line.Currency is { } code ? Currency.Of(code) : null;
        return new Movement
        {
            Source = line.Source,
            On = DateOnly.FromDayNumber(line.Day),
            What = StoredLines.KindOf(line.What),
            Sku = line.Design!,
            Channel = line.Place,
            Pieces = line.Pieces,
            Paid = StoredLines.Money(line.Paid, currency),
            Listed = StoredLines.Money(line.Listed, currency),
            Order = line.OrderMark is { } mark ? LineId.OfNumber(BinaryPrimitives.ReadUInt64BigEndian(mark)) : null,
            Fees = StoredLines.Money(line.Fees, currency),
            ShippingCharged = StoredLines.Money(line.ShippingCharged, currency),
            ShippingCost = StoredLines.Money(line.ShippingCost, currency),
            Grade = line.Grade is null ? Grade.Good : Grade.Second,
            Resale = line.Resale is null,
            Stall = line.Stall,
            Piece = line.Piece,
            Position = line.Position,
        };
    }

    public static BenchEntry Of(BenchLine line) => new()
    {
        Source = line.Source,
        On = DateOnly.FromDayNumber(line.Day),
        Sku = line.Design,
        Step = line.Step,
        Started = line.Started,
        Good = line.Good,
        Minutes = line.Minutes / Hundredths,
        Position = line.Position,
    };

    public static PriceFloor.Evidence.Lines.LogSource Of(Storage.LogSource source) => new(source.Name, source.IsWholeDays, source.CountsAsMade);
}
