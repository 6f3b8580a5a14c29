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

    /// <summary>What each line rests on. What a design or a channel leaves open is looked for once, however many lines name it.</summary>
    public IEnumerable<Assumption> Assumptions
    {
        get
        {
            var ofProfile = new HashSet<Assumption>();
            var found = new Dictionary<object, List<Assumption>>(ReferenceEqualityComparer.Instance);
            foreach (var (i, sale) in Sales.Index())
                foreach (var one in Once(sale.Floor, () => sale.Floor.Assumptions)
                        .Concat(Once(sale.Channel, () => Assumed.In(sale.Channel.Document, "/channel"))))
                    if (!IsOfProfile(one.Pointer))
                        yield return one with { Pointer = Below(one.Pointer, i) };
                    else if (ofProfile.Add(one))
                        yield return one;

            List<Assumption> Once(object key, Func<IEnumerable<Assumption>> find) =>
                found.TryGetValue(key, out var known) ? known : found[key] = [.. find()];
        }
    }

    public IEnumerable<Warning> WarningsOn(DateOnly today)
    {
        var ofChannel = new Dictionary<object, List<Warning>>(ReferenceEqualityComparer.Instance);
        return Warnings.In(Year, today).Concat(Sales.SelectMany((sale, i) => Warnings.In(sale.Floor.Floor.UnitCost)
            .Concat(OfChannel(sale)).Concat(sale.WarningsOfThePrice).Select(one => one with { Pointer = Below(one.Pointer, i) })));

        List<Warning> OfChannel(CheckedPrice sale) =>
            ofChannel.TryGetValue(sale.Channel, out var known) ? known : ofChannel[sale.Channel] = [.. sale.WarningsOfTheChannel];
    }

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
        IsOfProfile(pointer) ? pointer : FormattableString.Invariant($"/lines/{line}{pointer}");

    private static bool IsOfProfile(string pointer) => pointer.StartsWith("/profile", StringComparison.Ordinal);
}
