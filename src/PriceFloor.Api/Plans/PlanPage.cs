using System.Globalization;
using System.Text;
using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.Plans;

/// <summary>A planned year as one page to print: cash by month, hours by month, where the money is, and what may be wrong.</summary>
public static class PlanPage
{
    /// <param name="answer">The months.</param>
    /// <param name="asked">The plan.</param>
    public static byte[] Of(PlanMonthsAnswer answer, PlanInQuestion asked)
    {
        var page = new StringBuilder($"<h1>The year month by month</h1>\n<p>Plan {PrintedPage.Text(asked.Plan.Key)}, {answer.Currency}. ")
            .Append($"Lowest cash: {Money(answer, answer.LowestCash.Amount)} in {Named(answer, answer.LowestCash)}; ")
            .Append($"lowest free cash: {Money(answer, answer.LowestFree.Amount)} in {Named(answer, answer.LowestFree)}.</p>\n");
        if (answer.OpeningNeeded > 0)
            page.Append($"<p>To keep the reserve the year would have to begin with {Money(answer, answer.OpeningNeeded)}.</p>\n");
        page.Append(answer.BuildFrom is { } from
            ? $"<p>Make ahead from {Month(answer.Months[(int)from - 1])} on; at most {Hour(answer.StockAtMost)} hours of work lie ready.</p>\n"
            : "<p>Nothing is made ahead.</p>\n");
        Cash(page, answer, asked.Months.Plan.Opening.SalesTaxHeld);
        Hours(page, answer);
        Bridge(page, answer);
        Notes(page, answer);
        return PrintedPage.Of($"The year month by month, {asked.Plan.Key}", page);
    }

    private static void Cash(StringBuilder page, PlanMonthsAnswer answer, decimal salesTaxHeld)
    {
        page.Append("<h2>Cash</h2>\n");
        Head(page, "Cash", "Free", "In", "Out", "Taxes", "Set aside"); // what matters most is what a telephone shows without moving the table
        var held = salesTaxHeld;
        foreach (var month in answer.Months)
        {
            var collected = month.SalesTaxHeld - held + month.SalesTaxPaid;
            Row(page, Short(month), [month.Cash, month.Free, InOf(month) + collected, OutOf(month), month.TaxPaid + month.SalesTaxPaid,
                month.TaxSetAside], amount => Money(answer, amount));
            held = month.SalesTaxHeld;
        }

        page.Append("</tbody>\n</table>\n</div>\n")
            .Append("<p><small>Cash and free: when the month ends. Free: cash less tax set aside, deposits and sales tax. "
            + "In: sales with their sales tax, and other income. Out: materials, bills, household and equipment. "
            + "Taxes: income tax and sales tax that are paid.</small></p>\n");
    }

    private static void Hours(StringBuilder page, PlanMonthsAnswer answer)
    {
        page.Append("<h2>Hours at the bench</h2>\n");
        Head(page, "Sold", "Made", "There are", "Ready at start");
        foreach (var month in answer.Months)
            Row(page, Short(month), [month.NeedHours, month.MadeHours, month.Capacity, month.StockHours], Hour);
        page.Append("</tbody>\n</table>\n</div>\n");
    }

    private static void Bridge(StringBuilder page, PlanMonthsAnswer answer)
    {
        page.Append("<h2>From the year's profit to its cash</h2>\n<table>\n<tbody>\n");
        foreach (var part in answer.Reconciled.Parts.Where(part => part.Amount != 0))
            Row(page, Words(part.Name), [part.Amount], amount => Money(answer, amount));
        Row(page, "Change of cash", [answer.Reconciled.Change], amount => Money(answer, amount));
        page.Append("</tbody>\n</table>\n");
    }

    private static void Notes(StringBuilder page, PlanMonthsAnswer answer)
    {
        var notes = answer.Warnings.Select(warning => $"<p>{PrintedPage.Text(DisplayText.Message(warning.Message))}</p>").Distinct().ToList();
        if (notes.Count > 0)
            page.Append($"<footer>{string.Concat(notes)}</footer>\n");
    }

    private static void Head(StringBuilder page, params IReadOnlyList<string> columns) => page
        .Append("<div class=\"wide\">\n<table>\n<thead><tr><th scope=\"col\">Month</th>")
        .Append(string.Concat(columns.Select(column => $"<th scope=\"col\" class=\"money\">{column}</th>"))).Append("</tr></thead>\n<tbody>\n");

    private static void Row(StringBuilder page, string name, IReadOnlyList<decimal> figures, Func<decimal, string> shown) => page
        .Append($"<tr><th scope=\"row\">{name}</th>")
        .Append(string.Concat(figures.Select(figure => $"<td class=\"money\">{shown(figure)}</td>"))).Append("</tr>\n");

    private static string Hour(decimal hours) => hours.ToString("#,0.0", CultureInfo.InvariantCulture);

    private static decimal InOf(PlanMonthAnswer month) => month.Receipts + month.OtherIncome;

    private static decimal OutOf(PlanMonthAnswer month) => month.Materials + month.Bills + month.Household + month.Bought;

    private static string Money(PlanMonthsAnswer answer, decimal amount) => DisplayText.Money(amount, answer.Currency);

    private static string Named(PlanMonthsAnswer answer, LowPointAnswer low) => Month(answer.Months[(int)low.Month - 1]);

    private static string Month(PlanMonthAnswer month) => month.From.ToString("MMMM yyyy", CultureInfo.InvariantCulture);

    private static string Short(PlanMonthAnswer month) => month.From.ToString("MMM yyyy", CultureInfo.InvariantCulture);

    private static string Words(CashPartKind kind) => kind switch
    {
        CashPartKind.Profit => "Profit before tax",
        CashPartKind.Depreciation => "Depreciation, which nobody pays",
        CashPartKind.BusinessShares => "Business shares, paid with the household",
        CashPartKind.Household => "Household",
        CashPartKind.NotDeductible => "Paid out of taxed money",
        CashPartKind.NetIncome => "Other income, already taxed",
        CashPartKind.TaxPaid => "Income tax paid",
        CashPartKind.EquipmentBought => "Equipment bought",
        CashPartKind.DepositsHeld => "Deposits held, more than before",
        CashPartKind.OwedToUs => "Owed to the studio, less than before",
        CashPartKind.MaterialsInStock => "Materials that were paid the year before",
        _ => "Sales tax held, more than before",
    };
}
