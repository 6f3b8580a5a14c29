namespace PriceFloor.Pricing.Numbers;

/// <summary>What documents can have wrong in themselves, and why there can be no answer.</summary>
public static class FaultCodes
{
    public static readonly Code Required = new("required",
        "A field or a line that is needed is missing or empty.",
        "Give it; the detail says which and when it is needed.");

    public static readonly Code Unexpected = new("unexpected",
        "The field has no meaning beside the others.",
        "Leave it out, or change the field that the detail names.");

    public static readonly Code OutOfRange = new("out-of-range",
        "The value is below the least or above the most that the field takes.",
        "Give a value in the range that the detail says; shares are fractions (0.2 is 20 %).");

    public static readonly Code OutOfOrder = new("out-of-order",
        "Two values stand the wrong way round, such as a maximum below its minimum or bands that do not rise.",
        "Put them in order.");

    public static readonly Code Duplicate = new("duplicate",
        "The same name or key stands in the list twice.",
        "Leave one out, or give it another name.");

    public static readonly Code ExactlyOne = new("exactly-one",
        "Exactly one of several fields is wanted; none or more than one is given.",
        "Give one of the fields that the detail lists.");

    public static readonly Code TooManyDecimals = new("too-many-decimals",
        "The value has more decimals than the field or the currency carries.",
        "Round it as you mean it; it is never rounded away.");

    public static readonly Code UnknownCurrency = new("unknown-currency",
        "The currency is not an ISO 4217 code of money that is spent.",
        "Write three capitals, such as USD, EUR or JPY.");

    public static readonly Code UnknownStep = new("unknown-step",
        "A material is used at a step that the design does not have.",
        "Use \"start\", \"finish\" or the name of one of the steps.");

    public static readonly Code UnknownMaterial = new("unknown-material",
        "A design uses a material that the profile's price list does not have.",
        "Add the material to the profile, or correct its name; case counts.");

    public static readonly Code NoWorkdays = new("no-workdays",
        "Other income takes every working day.",
        "Lower daysPerYear, or give more weeks or days.");

    public static readonly Code NoBenchTime = new("no-bench-time",
        "There are no bench hours to carry the year, or a piece takes none.",
        "Raise benchShare, give helpers their hours, or give the piece its minutes.");

    public static readonly Code MarginalRate = new("marginal-rate",
        "At some profit the taxes take everything that is earned on top, so no profit is enough.",
        "Check the rates and bands: together they must leave something of each further unit.");

    public static readonly Code TakesEverything = new("takes-everything",
        "The channel's fees, shop share or returns take all of a higher price, so no price is enough.",
        "Check shopShare, the fees' rates and returns.share.");

    public static readonly Code NoPrice = new("no-price",
        "No price up to 10^12 brings the floor on this channel.",
        "Check the channel's fees and the design's time and materials for a slipped decimal point.");

    public static readonly Code NeverBreaksEven = new("never-breaks-even",
        "What a piece leaves over, or the mix as a whole, carries nothing of the year.",
        "Raise the price, spend less on materials or fees, or change the ratios.");

    public static readonly Code Infeasible = new("infeasible",
        "No mix of whole pieces within the limits does what is asked.",
        "Lower a minimum, raise a limit, or ask for the largest surplus; the detail says what is short.");

    public static readonly Code Undecided = new("undecided",
        "The search for the best mix gave up before it found one or proved that there is none.",
        "Leave out some lines, or ask for the largest surplus.");

    public static readonly Code CurrencyMismatch = new("currency-mismatch",
        "Two currencies meet, and nothing is ever converted.",
        "Use a profile and channels of one currency.");

    public static readonly Code Undetermined = new("undetermined",
        "The values fit more than one cost and price.",
        "Give a cost, a price or a profit beside the markup or margin.");

    public static readonly Code Contradictory = new("contradictory",
        "The values do not fit each other.",
        "Leave out one of them, or correct it; the detail says what the others make of it.");

    public static readonly Code LeadsNowhere = new("leads-nowhere",
        "A pointer leads to nothing in the document.",
        "Check its names and indices; in a list a token is an index, the name of an item, or * for every item.");

    public static readonly Code AmbiguousName = new("ambiguous-name",
        "A name in a pointer is the name of two items of the list.",
        "Give one of the items another name, or use its index.");

    public static readonly Code NotWhole = new("not-whole",
        "The shares of a quote's deposit and payments are not 1 together, or the last phase of rising prices has not the share 1.",
        "Make them 1 together, such as 0.4 and 0.6; end with the phase that has the share 1.");

    public static readonly Code RangesTooWide = new("ranges-too-wide",
        "More than one draw in a hundred has no answer.",
        "Narrow the ranges: some of their numbers leave no bench time, or no price that is enough.");

    public static readonly Code TooLarge = new("too-large",
        "A figure on the way to the answer is too large, or a divisor too small, to be exact.",
        "Check the amounts for a slipped decimal point, or ask about less at once.");

    public static readonly Code NotASeason = new("not-a-season",
        "The season is not twelve weights of which one is above zero.",
        "Give twelve numbers of at least 0, one for each month of the year; only their proportions count.");

    public static readonly Code UnknownSeason = new("unknown-season",
        "A line of a plan names a season that the plan does not have.",
        "Add the season to the plan's seasons, or correct its name; case counts.");
}
