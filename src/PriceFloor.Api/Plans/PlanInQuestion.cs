using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.PriceChecks;

namespace PriceFloor.Api.Plans;

/// <summary>A plan, stored or sent, with its profile and its lines priced, as its months.</summary>
public sealed class PlanInQuestion
{
    private PlanInQuestion(Stored<Plan> plan, Stored<CostProfile> profile, SaleLines sold, YearByMonth months) =>
        (Plan, Profile, Sold, Months) = (plan, profile, sold, months);

    public Stored<Plan> Plan { get; }

    public Stored<CostProfile> Profile { get; }

    public SaleLines Sold { get; }

    public YearByMonth Months { get; }

    /// <summary>The revisions that the answer rests on.</summary>
    public IReadOnlyDictionary<string, object> Basis =>
        new Dictionary<string, object> { ["plan"] = Plan.Basis }.Concat(Sold.Basis).ToDictionary(part => part.Key, part => part.Value);

    /// <param name="catalogue">The documents of one moment.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="profile">Another profile than its own; null for its own.</param>
    /// <param name="at">Where the plan is: <c>#/plan</c> for one that was sent, else <c>#</c>.</param>
    /// <param name="anyDecimals">Whether prices may have any decimals, as the results of a multiplication do.</param>
    public static Outcome<PlanInQuestion> Of(Catalogue catalogue, Stored<Plan> plan, Stored<CostProfile>? profile = null, string at = "#",
        bool anyDecimals = false)
    {
        if ((profile ?? catalogue.Profile(plan.Document.Profile ?? "")) is not { } year)
            return RequestFault.Unknown(Place.In(at).Error("profile", InputCodes.UnknownProfile,
                $"There is no profile \"{plan.Document.Profile}\" (or there was none at that time); case counts."));
        var resolved = PlanNames.Resolved(catalogue, plan.Document, at);
        if (resolved.Found is not { } document)
            return resolved.Faults.ToList();
        var priced = PricedLine.Of(catalogue, document);
        if (priced.Found is not { } lines)
            return priced.Faults.ToList();
        var sold = SaleLines.Of(catalogue, year, lines, $"{at}/lines", anyDecimals);
        if (sold.Found is null)
            return sold.Faults.ToList();
        var months = YearByMonth.Of(sold.Value.Year, document,
            [.. sold.Value.Sales.Zip(document.Lines, (sale, line) => new PlannedLine(sale.Check, line.Units))]);
        return months.Found is null
            ? months.Faults.Select(fault => Placed(fault, at)).ToList()
            : new PlanInQuestion(plan, year, sold.Value, months.Value);
    }

    /// <summary>A sent plan is at fault itself; a stored one was sound, so its profile has changed.</summary>
    private static Fault Placed(Fault fault, string at) => fault.Pointer.Length > 0 && at != "#"
        ? RequestFault.Invalid(InputError.At(fault, at[1..]))
        : fault.Pointer.Length > 0 ? RequestFault.CannotCompute(fault.Code, $"{fault.Pointer}: {fault.Detail}") : fault;

    /// <summary>A line with its price: its own, or the listed one.</summary>
    private sealed record PricedLine(string Sku, string Channel, decimal? Price) : ISaleLine
    {
        public static Outcome<List<PricedLine>> Of(Catalogue catalogue, Plan plan)
        {
            var lines = plan.Lines.Select(line => new PricedLine(line.Sku, line.Channel,
                line.Price ?? catalogue.ListedPrices(line.Sku).GetValueOrDefault(line.Channel)?.Document.Price)).ToList();
            var without = lines.Where(line => line.Price is null).Select(line => $"{line.Sku} on {line.Channel}").Distinct().ToList();
            var some = string.Join(", ", without.Take(5)) + (without.Count > 5 ? " and others" : "");
            return without.Count == 0 ? lines
                : RequestFault.CannotCompute(FaultCodes.NoPrice, $"No price is listed for {some}; give the lines a price, or list one.");
        }
    }
}
