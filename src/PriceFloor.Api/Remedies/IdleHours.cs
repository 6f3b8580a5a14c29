using System.Globalization;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;

namespace PriceFloor.Api.Remedies;

/// <summary>
/// Working faster promises what the year will not give while bench hours lie idle: time that is saved closes nothing unless it is sold.
/// </summary>
internal static class IdleHours
{
    /// <summary>Says so if the profile has plans and each of them leaves hours idle.</summary>
    /// <param name="catalogue">The documents of one moment.</param>
    /// <param name="profile">The profile.</param>
    /// <param name="offersFaster">Whether working faster is offered.</param>
    /// <param name="at">Where they are in the answer.</param>
    public static IEnumerable<Warning> Warnings(Catalogue catalogue, Stored<CostProfile> profile, bool offersFaster, string at)
    {
        if (!offersFaster || catalogue.Year(profile).Found is not { } year)
            yield break;
        var plans = catalogue.Plans.Where(plan => plan.Sound?.Profile == profile.Key)
            .Select(plan => (plan.Key, Takes: HoursOf(catalogue, plan.Document), Has: year.BenchHours - plan.Document.HoursKeptBack)).ToList();
        if (plans.Count == 0 || !plans.TrueForAll(plan => plan.Takes is { } takes && Rounding.Settle(plan.Has) > Rounding.Settle(takes)))
            yield break;
        var fullest = plans.MinBy(plan => plan.Has - plan.Takes!.Value);
        yield return new Warning(WarningCodes.HoursNotShort, string.Create(CultureInfo.InvariantCulture,
            $"The plan \"{fullest.Key}\" takes {Answers.Hours(fullest.Takes!.Value)} of {Answers.Hours(fullest.Has)} bench hours, so working faster "
            + $"closes nothing of the year unless the saved time is sold."), at);
    }

    /// <summary>The bench hours of a plan's lines; null if one of their designs has no floor.</summary>
    private static decimal? HoursOf(Catalogue catalogue, Plan plan)
    {
        var hours = 0m;
        foreach (var line in plan.Lines)
        {
            if (catalogue.DesignNamed(line.Sku) is not { Sound: not null } design || catalogue.Profile(design.Document.Profile) is not { } profile
                    || catalogue.Floor(profile, design).Found is not { } floor)
                return null;
            hours += line.Units * floor.Floor.UnitCost.BenchHours;
        }

        return hours;
    }
}
