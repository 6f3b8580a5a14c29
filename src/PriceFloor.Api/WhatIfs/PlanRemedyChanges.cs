using System.Text.Json;
using PriceFloor.Api.Changes;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Plans;

namespace PriceFloor.Api.WhatIfs;

/// <summary>The ways to close a plan as changes that are ready to be sent.</summary>
internal sealed class PlanRemedyChanges(PlanInQuestion asked)
{
    private const int FactorDecimals = 8;

    private string Plan => $"{Kinds.Plan}:{asked.Plan.Key}";

    private string Profile => $"{Kinds.Profile}:{asked.Profile.Key}";

    /// <summary>Every way, in order; none for a plan that closes.</summary>
    public static Outcome<IReadOnlyList<PlanRemedyAnswer>> Of(PlanInQuestion asked)
    {
        var (remedies, changes) = (PlanRemedies.Of(asked.Months.Totals), new PlanRemedyChanges(asked));
        return remedies.Found is { } found ? new List<PlanRemedyAnswer>(found.Select(changes.AnswerOf)) : remedies.Faults.ToList();
    }

    private PlanRemedyAnswer AnswerOf(PlanRemedy one)
    {
        var changes = one.Value is { } value ? ChangesOf(one.Way, value) : null;
        return new PlanRemedyAnswer
        {
            Way = one.Way,
            Possible = one.Possible,
            Reason = one.Reason,
            Value = one.Value,
            Changes = changes is { Count: > 0 and <= DocumentChangeRules.MostChanges } ? changes : null,
        };
    }

    private IReadOnlyList<DocumentChange> ChangesOf(PlanWay way, decimal value) => way switch
    {
        PlanWay.RaiseThePrices => [.. Raised(1 + value)],
        PlanWay.SellMore => [By(Plan, "/lines/*/units", value)],
        PlanWay.SpendLess => [.. Cut(value)],
        PlanWay.EarnTaxableElsewhere => [Income(value, IncomeKind.Taxable)],
        PlanWay.EarnNetElsewhere => [Income(value, IncomeKind.Net)],
        _ => [],
    };

    /// <summary>Prices in the plan, and the listed ones of lines that take these.</summary>
    private IEnumerable<DocumentChange> Raised(decimal factor)
    {
        if (asked.Months.Plan.Lines.Any(line => line.Price is not null))
            yield return By(Plan, "/lines/*/price", factor);
        foreach (var listed in asked.Months.Plan.Lines.Where(line => line.Price is null).Select(line => (line.Sku, line.Channel)).Distinct())
            yield return By($"{Kinds.ListedPrice}:{listed.Sku}/{listed.Channel}", "/price", factor);
    }

    /// <summary>One factor on each line that bench time pays and that lowers the profit; none if these are not as much.</summary>
    private IEnumerable<DocumentChange> Cut(decimal cut)
    {
        var expenses = asked.Profile.Document.Expenses;
        var lines = expenses.Index().Where(line => line.Item is { Deductible: true, TracedTo: null, Amount: > 0 }).ToList();
        var all = lines.Sum(line => Annual.Amount(line.Item));
        if (lines.Count == 0 || !all.Reaches(cut))
            return [];
        var factor = Rounding.Trim(decimal.Max(0, Rounding.Down(1 - cut / all, FactorDecimals)));
        return lines.Select(line => By(Profile, $"/expenses/{TokenOf(expenses, line.Index)}/amount", factor));
    }

    /// <summary>A line's name where it is its own, since names outlive insertions; else its index.</summary>
    private static string TokenOf(IReadOnlyList<Expense> expenses, int index) =>
        expenses[index].Name is { Length: > 0 } name && ListToken.Items(name, [.. expenses.Select(line => line.Name)], "").Found is [var found]
            && found == index ? DocumentPointer.Escape(name) : FormattableString.Invariant($"{index}");

    private DocumentChange Income(decimal amount, IncomeKind kind) => new()
    {
        Of = Profile,
        At = "/otherIncome/-",
        To = new AnyJson(JsonSerializer.SerializeToElement(
            new { Name = "To close the plan", Amount = amount, Per = Per.Year, Kind = kind }, WireJson.Options)),
    };

    private static DocumentChange By(string of, string at, decimal factor) =>
        new() { Of = of, At = at, By = new NumberOr<NumberRange>(factor, null) };
}
