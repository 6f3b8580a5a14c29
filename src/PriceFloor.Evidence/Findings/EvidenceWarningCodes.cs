namespace PriceFloor.Evidence.Findings;

/// <summary>What may make findings wrong without making them impossible.</summary>
public static class EvidenceWarningCodes
{
    public static readonly Code TooFew = new("too-few",
        "Too little was seen for a finding, so nothing is drafted from it.",
        "Keep writing down; the finding is shown meanwhile.");

    public static readonly Code FailsInLots = new("fails-in-lots",
        "Pieces fail together, so whole loads go wrong and the average hides it.",
        "Look for what the bad loads have in common: the kiln, a batch of glass, one day.");

    public static readonly Code YoungStock = new("young-stock",
        "Too few pieces are two years old, so the share that sells is at least as high as shown.",
        "Nothing needs doing; the share becomes surer as pieces get older.");

    public static readonly Code StockUnknown = new("stock-unknown",
        "More pieces were sold than were made, so what is on hand and how fast it sells is not known.",
        "Add what was made, or count what is there.");

    public static readonly Code StockDiffers = new("stock-differs",
        "A count found another number of pieces than the lines say.",
        "Look for sales, gifts or breakage that nobody wrote down.");

    public static readonly Code LogThin = new("log-thin",
        "The bench log has fewer than 80 % of the pieces that were made.",
        "Write every batch into the bench log, also the bad ones.");

    public static readonly Code StillLearning = new("still-learning",
        "The next run will be more than 5 % quicker than a piece takes today.",
        "Look again after the next run.");

    public static readonly Code LongPause = new("long-pause",
        "The bench log has a gap of 90 days or more, in which hands forget.",
        "Give from with the day after the pause, if the work was slower afterwards.");

    public static readonly Code OldLog = new("old-log",
        "The newest line is more than 90 days old.",
        "Send newer lines, or give to with the day that they reach.");

    public static readonly Code OneBigOrder = new("one-big-order",
        "One order has more than a quarter of the pieces sold.",
        "Read the figures as if it might not come again.");

    public static readonly Code OtherMoney = new("other-money",
        "Sales are left out, because their money is another or their channel is no longer stored. Nothing is converted.",
        "Sell in the profile's currency, or read the figures as those of the other sales.");

    public static readonly Code FeesDiffer = new("fees-differ",
        "The fees charged are more than 1 % away from what the channel's fees come to.",
        "Compare the channel's fees with the rate and fixed amount that fit what was charged.");

    public static readonly Code MixedMaking = new("mixed-making",
        "The way of making changed within the days that the bench log covers.",
        "Give from with the day of the change.");

    public static readonly Code DiscountNotInChannel = new("discount-not-in-channel",
        "Buyers paid less than the listed prices, and the channel has no usual discount.",
        "Take usualDiscount from the channel's draft.");

    public static readonly Code MadeTwice = new("made-twice",
        "The bench book and movements both say what was made of a design on one day; the movements count.",
        "Leave countsAsMade out, or the movements of what was made.");

    public static readonly Code SeasonUnknown = new("season-unknown",
        "Less than a year of orders was seen, so every month weighs the same.",
        "Read December's figures with care; nothing needs doing.");

    public static readonly Code Guess = new("guess",
        "Fewer than 30 orders came after a change of price, so how buyers answer to price is what is known in general.",
        "Change prices of a few designs, one step each, and ask again when the orders are there.");

    public static readonly Code UndercutsGallery = new("undercuts-gallery",
        "The same design stands unmarked at a gallery, so no lower price is offered here.",
        "Take the gallery's pieces back first, or agree on the lower price with it.");

    public static readonly Code TooCloseToTell = new("too-close-to-tell",
        "What an hour at the bench must earn lies within what it may have earned.",
        "Nothing needs doing; more bench entries make it surer.");
}
