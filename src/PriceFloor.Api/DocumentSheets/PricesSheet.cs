using System.Text;
using FluentValidation;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.ListedPrices;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.DocumentSheets;

/// <summary>Listed prices as a sheet: a design, a channel, and the name if the price is a name's own.</summary>
internal sealed class PricesSheet() : RowSheet<ListedPrice>("prices", "sku", "listed prices")
{
    public override IReadOnlyList<SheetColumn> Fields { get; } = SheetColumn.Of(typeof(ListedPriceRow));

    public override IEnumerable<SheetLine> RowsOf(string key, ListedPrice document)
    {
        var (sku, channel, alias) = ListedPriceKey.Of(key);
        return [new(sku, new ListedPriceRow { Channel = channel, Alias = alias, Price = document.Price, Clears = document.Clears })];
    }

    /// <summary>A row that cannot be read has no key.</summary>
    public override ListedPrice? Find(Catalogue catalogue, string key) => ListedPriceKey.Read(key) is { } listed
        ? catalogue.ListedPrices(listed.Sku).GetValueOrDefault(listed.Place)?.Document : null;

    public override ReadRow Read(string key, SheetRow row, SheetPlaces places, SheetDialect dialect, Func<string, ListedPrice?> find,
        IValidator<ListedPrice>? rules)
    {
        var record = new RecordBuilder<ListedPriceRow>(null);
        var ofCells = Put(record, row, places, dialect);
        var read = record.Read();
        var faults = Faults(ofCells, read.Faults, row, places).ConvertAll(fault => EmptyPrice.Told(fault, "price"));
        if (Keys.FaultIn(key) is { } against)
            faults.AddRange(AtCells([against with
            {
                Detail = $"{against.Detail} The price of another name has the design's own key in this column and the name in the column alias.",
            }], row, places));
        if (read.Found is { } found && Keys.FaultIn(found.Channel) is { } badChannel)
            faults.AddRange(AtCells([badChannel with { Pointer = "#/channel", Parameter = null }], row, places));
        if (faults.Count > 0 || read.Found is not { } line)
            return new ReadRow(NameOf(key, row, places), null, faults, row.Line);
        var named = new ListedPriceKey(key, line.Channel, string.IsNullOrEmpty(line.Alias) ? null : line.Alias).ToString();
        var before = find(named) ?? new ListedPrice { Price = 0 };
        var clears = places.Of("clearsPieces") is null && places.Of("clearsUntil") is null ? before.Clears : line.Clears;
        return new ReadRow(named, before with { Price = line.Price, Clears = clears }, [], row.Line);
    }

    /// <summary>The price that a faulty row is about, as far as its cells say: two rows of one design are about two prices.</summary>
    private static string NameOf(string key, SheetRow row, SheetPlaces places)
    {
        string Cell(string name) => places.Of(name) is { } at ? Encoding.UTF8.GetString(row.Text(at)) : "";
        return new ListedPriceKey(key, Cell("channel"), Cell("alias") is { Length: > 0 } alias ? alias : null).ToString();
    }
}
