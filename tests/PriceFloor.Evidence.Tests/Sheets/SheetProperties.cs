using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Sheets;

namespace PriceFloor.Evidence.Tests.Sheets;

public sealed class SheetProperties
{
    private static readonly LogWindow s_window = new(new DateOnly(2027, 3, 2), new DateOnly(2027, 3, 6));

    /// <summary>Few days, names, orders and refs, so that orders of several lines, repeated lines and strange ones are common.</summary>
    private static readonly Gen<string> s_row =
        from day in Gen.Elements("2027-03-01", "2027-03-03", "2027-03-05", "2027-03-07", "31.13.2027")
        from sku in Gen.Elements("RB-014", "pendant", "AB-001", "NEW-1", "")
        from pieces in Gen.Elements("1", "2", "-1", "0", "x")
        from price in Gen.Elements("10.00", "9.99", "0", "33.33", "1.005", "-4.00", "")
        from order in Gen.Elements("", "1", "2", "3")
        from discount in Gen.Elements("", "1.00", "0.05")
        from fees in Gen.Elements("", "0.37")
        from status in Gen.Frequency((5, Gen.Constant("paid")), (1, Gen.Constant("void")))
        select string.Join(',', day, sku, pieces, price, order, discount, fees, status);

    /// <summary>Rows of which each has its own ref, but for one in ten that stands there twice.</summary>
    private static readonly Gen<string[]> s_rows = s_row.ArrayOf().Select(rows =>
        rows.SelectMany((row, i) => Enumerable.Repeat(string.Create(CultureInfo.InvariantCulture, $"{row},r{i}"), i % 10 == 9 ? 2 : 1)).ToArray());

    [Property(MaxTest = 400)]
    public Property Lines_and_money_add_up_to_the_cent() => Prop.ForAll(s_rows.ToArbitrary(), rows =>
    {
        var settled = Settled(rows);
        return (settled.Read.Lines == rows.Length && settled.Refused.Count == settled.RefusedCount.Lines
            && settled.Used.Sum(line => Brought(line.Entry)) == settled.UsedCount.Money).ToProperty();
    });

    [Property(MaxTest = 400)]
    public Property Another_order_of_the_lines_and_the_sheet_twice_say_the_same() => Prop.ForAll(
        s_rows.ToArbitrary(), Gen.Choose(0, 1000).ToArbitrary(), (rows, seed) =>
        {
            string[] shuffled = [.. rows];
            new System.Random(seed).Shuffle(shuffled);
            var (once, other, twice) = (Settled(rows), Settled(shuffled), Settled([.. rows, .. rows]));
            return (Told(once) == Told(other) && Told(once) == Told(twice) && once.Read == other.Read).ToProperty();
        });

    [Property(MaxTest = 400)]
    public Property What_is_spread_over_an_order_adds_up_to_what_the_order_says() => Prop.ForAll(
        Gen.Choose(0, 100_000).ToArbitrary(), Gen.Elements(0m, 0.01m, 1m, 2.5m, 33.33m, 1000m).NonEmptyListOf().ToArbitrary(), (amount, weights) =>
        {
            var parts = Spread.ByWeight(amount, [.. weights]);
            var all = weights.Sum();
            return (parts.Sum() == amount && parts.All(part => part >= 0)
                && parts.Zip(weights).All(pair => all == 0 || decimal.Abs(pair.First - (amount * pair.Second / all)) < 1)).ToProperty();
        });

    private static SettledLines<Movement> Settled(string[] rows) => Shop.Settled(
        "on,sku,pieces,price,order,discount,fees,status,ref\n" + string.Join('\n', rows), Shop.Web with { Cancelled = ["void"] }, s_window);

    private static decimal Brought(Movement line) => line.What == MovementKind.Returned ? -line.Paid ?? 0 : line.Paid ?? 0;

    private static string Told(SettledLines<Movement> lines) =>
        string.Join('\n', lines.Used.Select(line => $"{line.Ref} {line.Entry.Position} {line.Entry.Fees} {Shop.Told(line.Entry)}"));
}
