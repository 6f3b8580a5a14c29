using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning;

/// <summary>Why a remedy cannot help, or a design budget has no figure.</summary>
public static class RemedyReasons
{
    public static readonly Code NothingReachesTheStudio = new("nothing-reaches-the-studio",
        "Selling at this price costs as much as it brings, before a minute of work is paid.",
        "Ask another price, sell elsewhere, or change the channel's terms.");

    public static readonly Code PriceBelowMaterials = new("price-below-materials",
        "What the sale brings does not even pay for the materials.",
        "Raise the price or use other materials; time, costs and income cannot help.");

    public static readonly Code FixedTime = new("fixed-time",
        "The time that must not be hurried alone takes more than this price pays for.",
        "Raise the price or choose another way; safety time is never offered as time to save, and one-off work is spent.");

    public static readonly Code MoreThanIsSpent = new("more-than-is-spent",
        "Even with no costs at all, the household's need is too much for this price.",
        "Combine several ways, or raise the price.");

    public static readonly Code NoMaterials = new("no-materials",
        "The design lists no materials to save on.",
        "Choose another way.");

    public static readonly Code MoreThanMaterials = new("more-than-materials",
        "Even without any materials the bench time is too much for this price.",
        "Combine several ways, or raise the price.");

    public static readonly Code NothingIsLost = new("nothing-is-lost",
        "No pieces are lost as it is.",
        "Choose another way.");

    public static readonly Code SecondsPayMoreThanTheyCost = new("seconds-pay-more-than-they-cost",
        "A second brings more than a rejected start costs, so better yield would raise the floor.",
        "Check the price of seconds.");

    public static readonly Code NotEnough = new("not-enough",
        "Even the best value of this figure falls short.",
        "Combine several ways, or raise the price.");

    public static readonly Code CostsRemain = new("costs-remain",
        "Even if the household needed nothing from the studio, its costs are too much for this price.",
        "Spend less, or raise the price.");

    public static readonly Code PayDecides = new("pay-decides",
        "The pay that is asked for decides what is needed, whatever else comes in or however long the week.",
        "Lower the pay, or choose another way.");

    public static readonly Code NoBenchShare = new("no-bench-share",
        "None of the working day is spent at the bench, so a longer one makes no more pieces.",
        "Check benchShare.");

    public static readonly Code LongerThanADay = new("longer-than-a-day",
        "It would take more hours than the working days have.",
        "Choose another way.");

    public static readonly Code SellingTakesItAll = new("selling-takes-it-all",
        "Selling a piece on this channel takes more time than the price pays for.",
        "Sell with less time a piece, sell elsewhere, or raise the price.");

    public static readonly Code ListedWholesaleDecides = new("listed-wholesale-decides",
        "What shops pay by the listed wholesale price makes the retail target higher than this price.",
        "Raise the price, or lower the listed wholesale price.");

    public static readonly Code MovesNoTarget = new("moves-no-target",
        "The target is a price before tax, and what the channel takes does not move it.",
        "Raise the price, or lower what the piece costs.");

    public static readonly Code NoShipping = new("no-shipping",
        "The channel has no shipping, charged or paid for.",
        "Choose another way.");

    public static readonly Code NothingPerOrder = new("nothing-per-order",
        "Nothing on the channel is paid or worked once an order, so larger orders save nothing.",
        "Choose another way.");

    public static readonly Code NoShopShare = new("no-shop-share",
        "No shop keeps a share of the price on this channel.",
        "Choose another way.");

    public static readonly Code NoStall = new("no-stall",
        "The channel has no stall that costs money or time.",
        "Choose another way.");

    public static readonly Code NoDiscount = new("no-discount",
        "The channel has no usual discount.",
        "Choose another way.");

    public static readonly Code NowhereElse = new("nowhere-else",
        "On no other channel of the currency does the piece hold at its listed price or at this one.",
        "Choose another way.");

    public static readonly Code BenchMustEarnNothing = new("bench-must-earn-nothing",
        "Bench time has nothing to earn, so any number of minutes is paid for.",
        "Nothing needs doing.");

    public static readonly Code TimeTakesItAll = new("time-takes-it-all",
        "At these minutes nothing of the price is left for materials.",
        "Plan fewer minutes, or raise the price.");

    public static readonly Code BeyondLimits = new("beyond-limits",
        "So many pieces would take more hours, loads or stalls than the year has.",
        "Choose another way, or raise prices where the hours are short.");

    public static readonly Code HoursNotShort = new("hours-not-short",
        "The plan leaves bench hours idle, so time that is saved closes nothing unless it is sold.",
        "Sell more, or choose another way; time to save helps once the hours are short.");

    public static readonly Code LongWeek = new("long-week",
        "The figure is more than 48 hours a week: shown, never advised.",
        "Choose another way.");
}
