using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.PriceChecks;

/// <summary>Lines of a request found in the store, all computed with one cost profile.</summary>
public sealed class SaleLines
{
    private readonly Stored<CostProfile> _profile;

    private SaleLines(Stored<CostProfile> profile, IReadOnlyList<CheckedPrice> sales) => (_profile, Sales) = (profile, sales);

    public IReadOnlyList<CheckedPrice> Sales { get; }

    public StudioYear Year => Sales[0].Floor.Floor.UnitCost.Year;

    /// <summary>The profile once, then each line's own.</summary>
    public IReadOnlyDictionary<string, object> Basis =>
        new Dictionary<string, object> { ["profile"] = _profile.Basis, ["lines"] = Sales.Select(sale => sale.Basis).ToList() };

    public IEnumerable<Assumption> Assumptions =>
        Sales.SelectMany((sale, i) => sale.Assumptions.Select(one => one with { Pointer = Below(one.Pointer, i) })).Distinct();

    public IEnumerable<Warning> WarningsOn(DateOnly today) => Warnings.In(Year, today)
        .Concat(Sales.SelectMany((sale, i) =>
            Warnings.In(sale.Floor.Floor.UnitCost).Concat(sale.WarningsOfTheSale).Select(one => one with { Pointer = Below(one.Pointer, i) })));

    /// <summary>Every line checked; what is unknown is reported for all lines at once.</summary>
    public static Outcome<SaleLines> Of(Catalogue catalogue, string profileKey, IReadOnlyList<ISaleLine> lines)
    {
        if (catalogue.Profile(profileKey) is not { } profile)
            return RequestFault.Unknown(Place.Body.Error("profile", InputCodes.UnknownProfile,
                $"There is no profile \"{profileKey}\"; case counts."));
        return Of(catalogue, profile, lines, "#/lines");
    }

    /// <summary>The same with a profile that is known.</summary>
    /// <param name="catalogue">The documents of one moment.</param>
    /// <param name="profile">The profile.</param>
    /// <param name="lines">The lines.</param>
    /// <param name="at">Where they are, such as <c>#/lines</c>.</param>
    /// <param name="anyDecimals">Whether prices may have any decimals, as the results of a multiplication do.</param>
    public static Outcome<SaleLines> Of(Catalogue catalogue, Stored<CostProfile> profile, IReadOnlyList<ISaleLine> lines, string at,
        bool anyDecimals = false)
    {
        var found = lines.Select((line, i) =>
            OnSale.Of(catalogue, line.Sku, line.Channel, line.Price, Place.In(FormattableString.Invariant($"{at}/{i}")), profile,
                anyDecimals)).ToList();
        var faults = found.SelectMany(line => line.Faults).ToList();
        return faults.Count > 0 ? faults : new SaleLines(profile, [.. found.Select(line => line.Value)]);
    }

    /// <summary>A fault of the profile is reported once; other faults are reported for their line.</summary>
    private static string Below(string pointer, int line) =>
        pointer.StartsWith("/profile", StringComparison.Ordinal) ? pointer : $"/lines/{line}{pointer}";
}
