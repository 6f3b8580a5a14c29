using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Explaining;

/// <summary>What may make a figure wrong without making it impossible.</summary>
public static class WarningCodes
{
    public static readonly Code WagesWithoutHelpers = new("wages-without-helpers",
        "Wages are paid but no helper has bench hours.",
        "Add helpers with their hours if they work at the bench; otherwise nothing needs doing.");

    public static readonly Code LifeOver = new("life-over",
        "A piece of equipment is written off, so nothing is put by for the next one.",
        "Plan its replacement: add it with its new cost, or put money by in the household.");

    public static readonly Code YearOver = new("year-over",
        "The profile's twelve months have passed.",
        "Store this year's costs with a new yearStart.");

    public static readonly Code DraftUnfinished = new("draft-unfinished",
        "The profile was drafted from statements and still has what no bank knows: every working hour is at the bench, or there is no tax. "
        + "Every floor is too low.",
        "Give the calendar's benchShare and the tax; if both are really so, take draftedFrom out of the profile.");

    public static readonly Code UnpaidTime = new("unpaid-time",
        "Nothing is asked for the maker's own time: no pay, and the household needs nothing from the studio.",
        "Add pay, or what the household lives on; otherwise the floor leaves the maker unpaid.");

    public static readonly Code TracedNotDeductible = new("traced-not-deductible",
        "A line with deductible false is paid out of taxed money, so its tracedTo has no effect.",
        "Leave tracedTo out, or leave deductible out if it is a cost of the business.");

    public static readonly Code FinancedAssetTwice = new("financed-asset-twice",
        "A loan's principal stands beside depreciation, perhaps of the thing that the loan bought.",
        "Keep one of the two, or leave both if the loan bought something else.");

    public static readonly Code LongWeek = new("long-week",
        "The calendar plans more than 48 working hours a week.",
        "Plan fewer hours; a floor that needs them is lower than a healthy year allows.");

    public static readonly Code MaterialsNotTraced = new("materials-not-traced",
        "The design lists materials while no expense is traced to pieces, so they may be counted twice.",
        "Set tracedTo \"piece\" on the expense lines that buy them.");

    public static readonly Code TracedMaterialsUnused = new("traced-materials-unused",
        "Expenses are traced to pieces while the design lists no materials, so nothing recovers them.",
        "List the design's materials, or take tracedTo off the expense.");

    public static readonly Code SecondsPayMoreThanTheyCost = new("seconds-pay-more-than-they-cost",
        "A second brings more than a rejected start costs, so better yield would raise the floor.",
        "Check the price of seconds.");

    public static readonly Code ChannelCostsNotTraced = new("channel-costs-not-traced",
        "The channel charges for a cost of which no expense is traced to sales, so it may be counted twice.",
        "Set tracedTo \"sale\" on the expense lines of that kind, or take them out of the expenses.");

    public static readonly Code TracedSaleCostsUnused = new("traced-sale-costs-unused",
        "Expenses are traced to sales while no channel charges for that kind, so nothing recovers them.",
        "Give the channel its fees, shipping, stall or costPerPiece, or take tracedTo off the expense.");

    public static readonly Code ClassCountedTwice = new("class-counted-twice",
        "The design is a class and the profile has other income from classes, both by their names: that income lowers every floor, and the design "
        + "asks for its share as well.",
        "Keep one of the two: take the income of that class out of otherIncome, or do not price it as a design. If they are different classes, "
        + "nothing needs doing.");

    public static readonly Code LimitBeforeHours = new("limit-before-hours",
        "Something scarce that the design takes, such as kiln loads, allows fewer pieces a year than the bench hours do.",
        "Look at floorWithinLimit: the most that the limit can ask of a piece. Fill the other hours with pieces that take less of it, "
        + "or raise the limit.");

    public static readonly Code SellingTimeNotTraced = new("selling-time-not-traced",
        "The channel charges a piece for selling time while the calendar has no sellingShare, so that time may be counted twice.",
        "Split the working day: lower nothing at the bench, and give the share that goes into selling as sellingShare.");

    public static readonly Code TracedSellingTimeUnused = new("traced-selling-time-unused",
        "The calendar has a sellingShare while the channel takes no selling time, so what it sells leaves part of that time unpaid.",
        "Give the channel its selling minutes or stall hours, or set sellingShare to 0.");

    public static readonly Code SalesTaxOnCostsUnsaid = new("sales-tax-on-costs-unsaid",
        "A channel has sales tax, and the profile does not say whether its costs hold sales tax that can be claimed back.",
        "Set costsInclude to \"claimable-tax\" or \"no-claimable-tax\"; with the first, give the costs without that tax to get a lower, true floor.");

    public static readonly Code SellingHoursShort = new("selling-hours-short",
        "The plan takes more hours of selling than the calendar's sellingShare leaves.",
        "Sell less on channels that take time, sell faster, or raise sellingShare.");

    public static readonly Code MoreStallsThanThereAre = new("more-stalls-than-there-are",
        "The plan takes more stalls on a channel than its timesAYear.",
        "Plan fewer pieces there, or book more stalls and raise timesAYear.");

    public static readonly Code OwnShopUndercutsGallery = new("own-shop-undercuts-gallery",
        "A design is listed lower on a channel of the studio's own than at a shop or gallery that keeps a share.",
        "List one price everywhere: oneRetailPrice says which holds on all of them.");

    public static readonly Code BelowFloor = new("below-floor",
        "The price of a quote, or a price on a line sheet, does not carry its part of the year.",
        "Raise it to the floor, or take work out of the quote; a surcharge for a rush does not count.");

    public static readonly Code RetailUndercutsShops = new("retail-undercuts-shops",
        "A design on a line sheet for shops is listed at retail for less than the profile's retailMultiple (usually 2) times what shops pay: it "
        + "undercuts shops that buy wholesale and double the price.",
        "List it at the target price of the retail channel, or sell it to shops for less if its floor allows that.");

    public static readonly Code DepositBelowOutOfPocket = new("deposit-below-out-of-pocket",
        "The deposit of a quote is less than what is paid out for it before the rest of the price comes in.",
        "Ask for leastDeposit at least.");

    public static readonly Code ValidTooLong = new("valid-too-long",
        "A quote is valid for more than 90 days, in which costs may move.",
        "Bring validUntil forward.");

    public static readonly Code NoHoursLeft = new("no-hours-left",
        "A quote takes more hours than are left until the promised day, the hours of accepted quotes taken off.",
        "Promise a later day, or offer less; a longer week is no answer.");

    public static readonly Code SecondsFromCommission = new("seconds-from-commission",
        "A quote counts on selling rejected pieces of a commission as seconds.",
        "Take seconds out of the design if the client's pieces may not be sold to others.");

    public static readonly Code QuotesRunOver = new("quotes-run-over",
        "The work of earlier quotes took longer than was quoted, by the median of the last 20.",
        "Look at where the time went, and quote the hours that it takes; the figures are not raised for it.");

    public static readonly Code CostsMovedSince = new("costs-moved-since",
        "The floor total of an issued quote would be another now.",
        "Nothing of the quote changes; think of it before the client accepts, or withdraw it.");

    public static readonly Code HeldAtBound = new("held-at-bound",
        "Some draws of a range pass the bounds of the field, and are held there.",
        "Narrow the range, if that is not meant.");

    public static readonly Code NotAdditive = new("not-additive",
        "The differences of scenarios do not add up to the difference of all of them together.",
        "Read combined for the whole; each scenario alone is still right.");

    public static readonly Code TracedSpendNotMoved = new("traced-spend-not-moved",
        "Prices of materials change and the expense lines traced to pieces do not, or the other way round.",
        "Change both, if they speak of the same purchases.");

    public static readonly Code TooLateToAnnounce = new("too-late-to-announce",
        "The notice that a channel is given would have had to begin before today.",
        "Let prices rise on the day that the message names or later, or give less notice.");

    public static readonly Code HoursNotShort = new("hours-not-short",
        "Every plan of the profile leaves bench hours idle, so time that is saved closes nothing unless it is sold.",
        "Sell more, or choose another way than to work faster.");

    public static readonly Code NotAnAllowedPrice = new("not-an-allowed-price",
        "The price is not one that the channel's priceStep and priceEnding allow.",
        "Choose an allowed price, or change the channel's steps.");

    public static readonly Code CashBelowZero = new("cash-below-zero",
        "A planned year runs out of cash in some month.",
        "Begin with more cash (openingNeeded), take deposits, move bills, or sell earlier.");

    public static readonly Code BelowReserve = new("below-reserve",
        "Cash falls below the reserve that the plan wants to keep.",
        "Begin with more cash (openingNeeded), or lower the reserve.");

    public static readonly Code OverCapacity = new("over-capacity",
        "The plan takes more bench hours than the year has, however they are spread.",
        "Plan fewer pieces, faster ones, or help at the bench.");

    public static readonly Code StockNeededAtStart = new("stock-needed-at-start",
        "More work must lie ready when the year begins than its opening stock has.",
        "Make it before the year begins and give it as opening.stock, or plan fewer pieces for the first months.");

    public static readonly Code SeasonUnlikeWork = new("season-unlike-work",
        "The bench is fully used three months running, while other months have hours to spare.",
        "Make ahead in quieter months, or spread work as the season is spread.");

    public static readonly Code TaxNotCovered = new("tax-not-covered",
        "What taxPaid pays for this year is less than the tax on the plan.",
        "Add payments to taxPaid, or keep what is left in the pot for next year.");

    public static readonly Code TermsUnknown = new("terms-unknown",
        "A shop or gallery has no terms, so its money is taken to come in with the sale.",
        "Give its item in terms: paidAfterMonths, and a deposit if there is one.");

    public static readonly Code BillsMonthAssumed = new("bills-month-assumed",
        "The months of bills that do not come every month are assumed, and they move the low point of cash.",
        "Say when they are paid with paidIn.");

    public static readonly Code PlanOfAnotherYear = new("plan-of-another-year",
        "The plan's key names another year than its profile has.",
        "Name a profile of that year, or give the plan another key.");

    public static readonly Code QuotesNotKeptBack = new("quotes-not-kept-back",
        "Accepted quotes that are not done take more hours than the plan keeps back.",
        "Set hoursKeptBack to the hours of GET /v1/quote-load, or say what became of quotes that are done.");

    public static readonly Code SalesLeftOut = new("sales-left-out",
        "The log has sold pieces of designs or channels that are not stored any more, or that have no figures, so they are not counted.",
        "Store the design or channel again, or send what was sold with POST.");

    public static readonly Code WorkWeeksDiffer = new("work-weeks-differ",
        "The weeks of work do not add up to the calendar's weeksPerYear; only their proportions count.",
        "Nothing needs doing if they are proportions; else correct one of them.");
}
