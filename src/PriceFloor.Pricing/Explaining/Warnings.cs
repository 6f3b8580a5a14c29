using System.Globalization;
using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Planning;
using PriceFloor.Pricing.Selling;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Explaining;

/// <summary>What an answer must not keep silent about.</summary>
public static class Warnings
{
    // Directive 2003/88/EC art. 6 and ILO Convention No. 1: at most 48 hours a week on average. A plausibility norm for the self-employed.
    private const decimal LongWeekHours = 48;

    /// <param name="year">The year.</param>
    /// <param name="today">The day for which the answer is given.</param>
    public static IEnumerable<Warning> In(StudioYear year, DateOnly today)
    {
        var profile = year.Profile;
        if (profile.Helpers.Sum(helper => helper.BenchHoursPerYear) == 0
                && Line(profile, line => line.CostKind == CostKind.WagesAndBenefits) is >= 0 and var wages)
            yield return new(WarningCodes.WagesWithoutHelpers, "Wages are paid but no helper has bench hours; add helpers if they work at the bench.",
                $"/profile/expenses/{wages}");
        foreach (var (index, thing) in profile.Equipment.Index())
            if (Depreciation.LifeIsOver(thing, year.YearStart))
                yield return new(WarningCodes.LifeOver, $"{thing.Name ?? "This equipment"} is written off; nothing is put by for the next one.",
                    $"/profile/equipment/{index}");
        if (new DateOnly(year.YearStart.Year, year.YearStart.Month, 1).AddMonths(12) <= today)
            yield return new(WarningCodes.YearOver, $"The profile's year began in {year.YearStart.ToString("yyyy-MM", CultureInfo.InvariantCulture)} "
                + "and is over; store this year's costs.", "/profile/yearStart");
        foreach (var unfinished in InDraft(profile))
            yield return unfinished;
        if (profile.Pay is null && year.Household <= year.NetIncome)
            yield return new(WarningCodes.UnpaidTime,
                "Nothing is asked for the maker's own time: no pay is given and the household needs nothing from the studio.", "/profile/pay");
        foreach (var (index, line) in profile.Expenses.Index())
            if (!line.Deductible && line.TracedTo is not null)
                yield return new(WarningCodes.TracedNotDeductible,
                    "A line that is not deductible is paid out of taxed money; its tracedTo has no effect.", $"/profile/expenses/{index}/tracedTo");
        if (year.Depreciation > 0 && Line(profile, line => !line.Deductible && line.CostKind == CostKind.InterestAndLoans) is >= 0 and var loan)
            yield return new(WarningCodes.FinancedAssetTwice,
                "A loan's principal stands beside depreciation: if the loan bought that equipment, its cost is counted twice.",
                $"/profile/expenses/{loan}");
        if (profile.Calendar.HoursPerDay * profile.Calendar.DaysPerWeek > LongWeekHours)
            yield return new(WarningCodes.LongWeek,
                "The calendar plans more than 48 working hours a week; a floor that needs them is lower than a healthy year allows.",
                "/profile/calendar");
    }

    /// <summary>What a profile that was drafted from statements still lacks.</summary>
    public static IEnumerable<Warning> InDraft(CostProfile profile)
    {
        if (profile.DraftedFrom is null)
            yield break;
        if (profile.Calendar.BenchShare == 1)
            yield return new(WarningCodes.DraftUnfinished, "The profile was drafted from statements, and it still takes every working hour as spent "
                + "at the bench. Give benchShare, the share of a day that really is, or every floor is too low.", "/profile/calendar/benchShare");
        if (profile.Tax.Kind == TaxKind.None)
            yield return new(WarningCodes.DraftUnfinished, "The profile was drafted from statements, and it still has no tax. Give your tax, or "
                + "every floor is too low; if you really pay none, take draftedFrom out.", "/profile/tax");
    }

    public static IEnumerable<Warning> In(UnitCost piece)
    {
        var traced = piece.Year.Traces(TracedTo.Piece);
        if (piece.Design.Materials.Count > 0 && !traced)
            yield return new(WarningCodes.MaterialsNotTraced,
                "The design lists materials while no expense is traced to pieces; they may be counted twice.", "/design/materials");
        if (piece.Design.Materials.Count == 0 && traced)
            yield return new(WarningCodes.TracedMaterialsUnused,
                "Expenses are traced to pieces while the design lists no materials; they are recovered nowhere.", "/design/materials");
        if (ClassNames.IsOne(piece.Design.Name)
                && piece.Year.Profile.OtherIncome.Index().FirstOrDefault(line => ClassNames.IsOne(line.Item.Name)) is { Item: not null } income)
            yield return new(WarningCodes.ClassCountedTwice,
                $"The design is a class by its name, and so is the other income \"{income.Item.Name}\": that income lowers every floor, and the design "
                + "asks for its share as well. Keep one of the two, unless they are different classes.",
                $"/profile/otherIncome/{income.Index}");
        if (piece.SecondsPayMoreThanTheyCost)
            yield return new(WarningCodes.SecondsPayMoreThanTheyCost,
                "A second brings more than a rejected start costs, so better yield would raise the floor; check the price of seconds.",
                "/design/seconds/price");
        if (piece.YearlyPieces.LimitBeforeHours is { } limit)
            yield return new(WarningCodes.LimitBeforeHours,
                $"Loads of {limit.Name} allow fewer pieces a year than the bench hours do; floorWithinLimit says what a piece would have to bring in "
                + "if this limit alone held the whole year back.", $"/profile/limits/{IndexOf(piece.Year.Profile.Limits, limit)}");
    }

    /// <summary>
    /// What the channel charges against what is traced to sales, kind by kind: a traced postage line says nothing about a stall. A traced line
    /// without a kind may be any of them.
    /// </summary>
    /// <param name="channel">The channel.</param>
    /// <param name="year">The year whose expenses may be traced to sales.</param>
    /// <param name="at">The channel's pointer, such as <c>/channel</c>.</param>
    /// <param name="others">The studio's other channels: what one of them charges is recovered there.</param>
    public static IEnumerable<Warning> In(Channel channel, StudioYear year, string at, IEnumerable<Channel> others)
    {
        var traced = year.Profile.Expenses.Where(line => line.Deductible && line.TracedTo == TracedTo.Sale).ToList();
        var anyKind = traced.Exists(line => line.CostKind is null);
        foreach (var cost in SellingCost.All)
        {
            var isTraced = traced.Exists(line => line.CostKind == cost.Kind);
            if (cost.IsChargedBy(channel) && !isTraced && !anyKind)
                yield return new(WarningCodes.ChannelCostsNotTraced,
                    $"The channel charges for {cost.Words} while no expense of that kind is traced to sales; these costs may be counted twice.",
                    at + cost.Pointer);
            if (isTraced && !cost.IsChargedBy(channel) && !others.Any(cost.IsChargedBy))
                yield return new(WarningCodes.TracedSaleCostsUnused,
                    $"Expenses for {cost.Words} are traced to sales while no channel charges any; they are recovered nowhere.", at + cost.Pointer);
        }

        foreach (var warning in TimeAndTax(channel, year.Profile, at))
            yield return warning;
        if (anyKind && !SellingCost.All.Any(cost => cost.IsChargedBy(channel)))
            yield return new(WarningCodes.TracedSaleCostsUnused,
                "Expenses are traced to sales while the channel charges nothing; they are recovered nowhere.", at);
    }

    private static IEnumerable<Warning> TimeAndTax(Channel channel, CostProfile profile, string at)
    {
        var takesTime = SellingTerms.TakesTime(channel);
        if (takesTime && profile.Calendar.SellingShare == 0)
            yield return new(WarningCodes.SellingTimeNotTraced,
                "The channel charges for selling time while the calendar has no sellingShare; that time may be counted twice.", $"{at}/selling");
        if (!takesTime && profile.Calendar.SellingShare > 0)
            yield return new(WarningCodes.TracedSellingTimeUnused,
                "The calendar has a sellingShare while this channel takes no selling time; what is sold here recovers none of it.", $"{at}/selling");
        if (channel.SalesTax.Rate > 0 && profile.CostsInclude is null)
            yield return new(WarningCodes.SalesTaxOnCostsUnsaid,
                "The channel has sales tax; say in costsInclude whether the profile's costs hold sales tax that can be claimed back.",
                "/profile/costsInclude");
    }

    /// <summary>What a plan takes beyond what there is of selling hours and stalls.</summary>
    public static IEnumerable<Warning> In(YearPlan plan)
    {
        if (!plan.WithinSellingHours)
            yield return new(WarningCodes.SellingHoursShort,
                "The plan takes more hours of selling than the calendar's sellingShare leaves.", "/profile/calendar/sellingShare");
        foreach (var use in plan.Stalls.Where(use => !use.Within))
            yield return new(WarningCodes.MoreStallsThanThereAre, string.Create(CultureInfo.InvariantCulture,
                $"The plan takes {use.Stalls} stalls on this channel, and there are {Rounding.Trim(use.Stall.TimesAYear!.Value)} in the year."),
                string.Create(CultureInfo.InvariantCulture, $"/lines/{use.Lines[0]}/channel/stall/timesAYear"));
    }

    public static IEnumerable<Warning> In(decimal price, PriceGrid grid) => grid.Allows(price) ? [] : [NotAllowed("/price")];

    public static Warning NotAllowed(string at) =>
        new(WarningCodes.NotAnAllowedPrice, "The price is not one that the channel's priceStep and priceEnding allow.", at);

    private static int IndexOf<T>(IReadOnlyList<T> items, T one) where T : class =>
        Enumerable.Range(0, items.Count).First(i => ReferenceEquals(items[i], one));

    private static int Line(CostProfile profile, Func<Expense, bool> matches) =>
        profile.Expenses.Index().Where(line => matches(line.Item)).Select(line => line.Index).DefaultIfEmpty(-1).First();
}

/// <summary>Something that may make a figure wrong without making it impossible.</summary>
/// <param name="Code">A stable word for programs.</param>
/// <param name="Message">A sentence for people.</param>
/// <param name="Pointer">The field it is about, below <c>/profile</c>, <c>/design</c>, the channel or <c>/price</c>.</param>
public sealed record Warning(Code Code, string Message, string Pointer);
