using System.Globalization;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Planning;
using PriceFloor.Pricing.Planning.ByMonth;

namespace PriceFloor.Pricing.Explaining;

public static partial class Workings
{
    /// <summary>After the workings of the year: the plan's lines, what is sold and made in each month, and its cash.</summary>
    public static IEnumerable<Working> Of(YearByMonth year)
    {
        var formulas = year.FormulasOf<WrittenFigure>();
        return
        [
            .. Of(year.Totals), .. OfProfit(year, formulas.Year), .. OfSold(year, formulas.Sold), .. OfStock(formulas.Stock),
            .. OfMaking(formulas.Making), .. OfReceipts(formulas), .. OfBills(formulas.Bills), .. OfCash(formulas.Cash), .. OfLowest(formulas),
        ];
    }

    /// <summary>A plan that closes has shown the tax on its profit already.</summary>
    private static IEnumerable<Working> OfProfit(YearByMonth year, PlanFormulas<WrittenFigure> formulas) => year.Totals.Closes ? [] :
    [
        Line(formulas.Profit, "the profit before tax that the plan brings"),
        .. Prefixed("plan", "on the plan's profit: ", OfTax(formulas.OnProfit, year.Year.TaxRules.Levies)),
    ];

    private static IEnumerable<Working> OfSold(YearByMonth year, SoldByMonthFormulas<WrittenFigure> sold) =>
    [
        .. year.Plan.Lines.Select(line => line.Season).Distinct().Zip(sold.Shares)
            .SelectMany((season, i) => Months(season.Second, $"the share of the year of season {i + 1}{Named(season.First)}")),
        .. sold.Groups.SelectMany((group, i) => OfGroup(group, i + 1, sold.Channels[group.Channel])),
        .. Months(sold.Hours, "bench hours of what is sold"),
        .. Months(sold.Materials, "materials of what is sold, less what seconds bring"),
        .. Months(sold.Contribution, "what the sales leave"),
        .. sold.Channels.SelectMany((channel, i) => Months(sold.Proceeds[i], $"what sales on {channel} bring to the studio")
            .Concat(Months(sold.SalesTax[i], $"sales tax on {channel} that comes to the studio"))),
    ];

    private static IEnumerable<Working> OfGroup(SoldGroup<WrittenFigure> group, int number, string channel)
    {
        var what = $"group {number}: lines {string.Join(", ", group.Lines.Select(line => line + 1))} on {channel}";
        yield return Line(group.Hours, $"{what}, bench hours");
        yield return Line(group.Proceeds, $"{what}, what reaches the studio");
        yield return Line(group.Materials, $"{what}, materials less what seconds bring");
        yield return Line(group.Contribution, $"{what}, what is left");
        if (group.SalesTax.Value != 0)
            yield return Line(group.SalesTax, $"{what}, sales tax");
    }

    private static IEnumerable<Working> OfStock(OpeningStockFormulas<WrittenFigure> stock)
    {
        foreach (var (line, month, pieces) in stock.Taken)
            yield return Line(pieces, At(month + 1, $"pieces of the opening stock that line {line + 1} takes"));
        yield return Line(stock.AllMaterials, "materials of the opening stock that is sold");
    }

    private static IEnumerable<Working> OfMaking(MakingFormulas<WrittenFigure> making) =>
    [
        .. Months(making.Needed, "bench hours that are left to work for its sales"),
        .. Months(making.MaterialsNeeded, "materials that are left to pay for its sales"),
        Line(making.Available, "bench hours of the year for the plan"),
        .. Months(making.Capacity, "bench hours that there are"),
        .. making.FirstPass is { } first ? Months(first, "hours that would lie ready if none did when the year ends").Reverse() : [],
        .. Months(making.Stock, "hours of work that must lie ready when it begins").Reverse(),
        Line(making.StockAtMost, "the most hours of work that lie ready"),
        .. Months(making.Made, "bench hours that are worked"),
        .. making.Served.Select(served => Line(served.Hours, At(served.Made + 1, $"of these hours, those for the sales of month {served.For + 1}"))),
        .. Months(making.Materials, "materials that are paid"),
    ];

    private static IEnumerable<Working> OfReceipts(ByMonthFormulas<WrittenFigure> formulas)
    {
        var receipts = formulas.Receipts;
        foreach (var (i, share) in receipts.DepositShares.Index())
            if (share.Value != 0)
                yield return Line(share, $"the share of sales on {formulas.Sold.Channels[i]} that is paid as a deposit");
        foreach (var line in Months(receipts.Receipts, "receipts").Concat(Months(receipts.Collected, "sales tax that comes in"))
            .Concat(Months(receipts.Deposits, "deposits held when it ends", from: 0))
            .Concat(Months(receipts.Owed, "what others owe when it ends", from: 0)))
            yield return line;
        yield return Line(receipts.TaxHeld[0], "sales tax held when the year begins");
        for (var month = 0; month < 12; month++)
        {
            yield return Line(receipts.TaxPaid[month], At(month + 1, "sales tax that is paid on"));
            yield return Line(receipts.TaxHeld[month + 1], At(month + 1, "sales tax held when it ends"));
        }
    }

    private static IEnumerable<Working> OfBills(BillFormulas<WrittenFigure> bills) =>
    [
        .. Months(bills.Bills, "bills"), .. Months(bills.Household, "the household"), .. Months(bills.OtherIncome, "other income"),
        .. Months(bills.Bought, "equipment bought"), Line(bills.HouseholdOfYear, "the household's year, in full"),
    ];

    private static IEnumerable<Working> OfCash(CashFormulas<WrittenFigure> cash)
    {
        yield return Line(cash.Aside[0], "tax set aside when the year begins");
        yield return Line(cash.Cash[0], "cash when the year begins");
        for (var month = 0; month < 12; month++)
        {
            yield return Line(cash.TaxPaid[month], At(month + 1, "tax that is paid"));
            yield return Line(cash.Aside[month + 1], At(month + 1, "tax set aside when it ends; below 0 if it is paid ahead"));
            yield return Line(cash.Cash[month + 1], At(month + 1, "cash when it ends"));
            yield return Line(cash.Free[month], At(month + 1, "cash when it ends that is the maker's own"));
        }

        yield return Line(cash.TaxPaidInAll, "tax that is paid in the year");
    }

    private static IEnumerable<Working> OfLowest(ByMonthFormulas<WrittenFigure> formulas)
    {
        yield return Line(formulas.LowestCash, "the least cash with which a month ends");
        yield return Line(formulas.LowestFree, "the least free cash with which a month ends");
        yield return Line(formulas.OpeningNeeded, "what the year would have to begin with to keep the reserve");
        yield return Line(formulas.Change, "by how much cash changes over the year");
    }

    private static IEnumerable<Working> Months(WrittenFigure[] months, string label, int from = 1) =>
        months.Select((figure, i) => Line(figure, At(i + from, label)));

    private static string At(int month, string label) => string.Create(CultureInfo.InvariantCulture, $"month {month}: {label}");
}
