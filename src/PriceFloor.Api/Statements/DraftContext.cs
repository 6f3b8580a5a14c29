using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Plans;
using PriceFloor.Statements;
using PriceFloor.Storage;

namespace PriceFloor.Api.Statements;

/// <summary>The stored documents that a draft needs: the reading rules, and the profile to compare with.</summary>
/// <param name="Rules">The rules; none if none are stored.</param>
/// <param name="HasRules">Whether rules are stored under the key.</param>
/// <param name="Against">The stored profile.</param>
/// <param name="Season">How the year's takings are spread: as the query says, or as a plan's receipts are; null: evenly.</param>
/// <param name="YearStart">The start of the year if a profile does not give one.</param>
/// <param name="Basis">The revisions.</param>
public sealed record DraftContext(ReadyRules Rules, bool HasRules, Stored<CostProfile>? Against, Season? Season, DateOnly YearStart,
    IReadOnlyDictionary<string, string> Basis)
{
    /// <summary>
    /// What the caller may know of it. Without the scope "read" that is nothing: a request that names rules or a profile is refused, and the lines
    /// are sorted by no rules.
    /// </summary>
    public static async ValueTask<Outcome<DraftContext>> OfAsync(StatementQuery query, CatalogueReader reader, Store store, Caller caller)
    {
        if (!caller.May(Scope.Read) && (query.NamesRules || query.Against is not null || query.Plan is not null))
            return RequestFault.Of(ProblemTypes.KeyNotAllowed,
                "rules, against and plan name stored documents, which needs a key with the scope \"read\"; leave them out, or use such a key.");
        var revision = caller.May(Scope.Read) ? await store.ReadAsync(snapshot => caller.Access.Seen(
            snapshot, snapshot.Find(Kinds.ReadingRules, query.Rules, query.AsOf is { } moment ? Moment.Of(moment) : null))) : null;
        var (against, yearStart, planned) = await reader.Read(query.AsOf,
            catalogue => (query.Against is { } key ? catalogue.Profile(key) : null, catalogue.YearStart, Planned(catalogue, query.Plan)));
        var missing = planned?.Faults.ToList() ?? [];
        if (revision is null && query.NamesRules)
            missing.Add(RequestFault.Unknown(new InputError
            {
                Parameter = "rules",
                Code = InputCodes.UnknownReadingRules,
                Detail = $"There are no reading rules \"{query.Rules}\"; case counts.",
            }));
        if (query.Against is not null && against is null)
            missing.Add(RequestFault.Unknown(new InputError
            {
                Parameter = "against",
                Code = InputCodes.UnknownProfile,
                Detail = $"There is no profile \"{query.Against}\"; case counts.",
            }));
        if (missing.Count > 0)
            return missing;

        var (plan, basis) = (planned?.Value, new Dictionary<string, string>());
        if (revision is not null)
            basis["rules"] = FormattableString.Invariant($"{revision.Key}@{revision.Number}");
        if (against is not null)
            basis["profile"] = against.Basis;
        if (plan is not null)
            basis["plan"] = plan.Plan.Basis;
        var rules = revision is null ? ReadyRules.Empty : ReadyRules.Of(StoredText<ReadingRules>.Of(revision));
        return new DraftContext(rules, revision is not null, against, query.Season ?? SeasonOf(plan), yearStart, basis);
    }

    /// <summary>Null if no plan is named.</summary>
    private static Outcome<PlanInQuestion>? Planned(Catalogue catalogue, string? key)
    {
        if (key is null)
            return null;
        return catalogue.Plan(key) is { } plan ? PlanInQuestion.Of(catalogue, plan) : RequestFault.Unknown(new InputError
        {
            Parameter = "plan",
            Code = InputCodes.UnknownPlan,
            Detail = $"There is no plan \"{key}\"; case counts.",
        });
    }

    /// <summary>What reaches the studio in each month: deposits before the sale, and what is paid later.</summary>
    private static Season? SeasonOf(PlanInQuestion? plan) =>
        plan is null ? null : Season.Of([.. plan.Months.Months.Select(month => decimal.Max(0, month.Receipts))]);
}
