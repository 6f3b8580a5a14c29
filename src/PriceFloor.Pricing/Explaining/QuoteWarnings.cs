using System.Globalization;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Explaining;

/// <summary>What the figures of a quote must not keep silent about.</summary>
public static class QuoteWarnings
{
    /// <summary>From so many done quotes on, what they ran over is told.</summary>
    public const int EnoughToTell = 5;

    private const int LongestValidDays = 90, DaysOfYear = 365;

    /// <param name="work">The work that is offered.</param>
    /// <param name="terms">The quote.</param>
    /// <param name="today">The day for which the answer is given, or on which it is issued.</param>
    public static IEnumerable<Warning> In(MadeToOrder work, QuoteTerms terms, DateOnly today)
    {
        var money = work.Year.Currency;
        if (terms.Price is { } price)
        {
            if (!work.CarriesItsShare(price))
                yield return new(WarningCodes.BelowFloor, "The price does not carry the order's part of the year"
                    + $"{(terms.Rush > 0 ? "; a surcharge for a rush does not count towards the floor" : "")}.", "/price");
            var deposit = (terms.Deposit?.Share ?? 0) * price;
            if (!deposit.Reaches(work.OutOfPocket))
                yield return new(WarningCodes.DepositBelowOutOfPocket, string.Create(CultureInfo.InvariantCulture,
                    $"The deposit is {money.Round(deposit)}, and {work.LeastDeposit} are paid out before the rest comes in."), "/deposit");
        }

        if (terms.ValidUntil > today.AddDays(LongestValidDays))
            yield return new(WarningCodes.ValidTooLong,
                $"The quote is valid for more than {LongestValidDays} days, in which costs may move.", "/validUntil");
        foreach (var (index, run) in work.Runs.Index())
            if (run.Seconds > 0)
                yield return new(WarningCodes.SecondsFromCommission,
                    "The line counts on selling its rejected pieces as seconds; ask whether a piece made for one client may be sold to another.",
                    FormattableString.Invariant($"/lines/{index}/design/seconds"));
    }

    /// <summary>Whether the hours until the promised day are enough, the year's hours spread over its days.</summary>
    /// <param name="work">The work that is offered.</param>
    /// <param name="promised">The promised day.</param>
    /// <param name="today">The day on which it could begin.</param>
    /// <param name="load">Hours of accepted quotes that are not done.</param>
    public static IEnumerable<Warning> OfPromise(MadeToOrder work, DateOnly promised, DateOnly today, decimal load)
    {
        var days = int.Max(0, promised.DayNumber - today.DayNumber);
        var free = decimal.Max(0, work.Year.BenchHours * days / DaysOfYear - load);
        if (!free.Reaches(work.Hours))
            yield return new(WarningCodes.NoHoursLeft, string.Create(CultureInfo.InvariantCulture,
                $"The work takes {Rounding.Trim(Rounding.Up(work.Hours, 1))} hours, and {Rounding.Trim(Rounding.Down(free, 1))} are left "
                + $"until the promised day."), "/promised");
    }

    /// <summary>What earlier quotes took against what was quoted, from a few on.</summary>
    /// <param name="count">How many of them there are.</param>
    /// <param name="median">The median of what they took over what was quoted.</param>
    public static IEnumerable<Warning> OfEarlier(int count, decimal median) => count < EnoughToTell || Rounding.Settle(median) <= 1 ? [] :
    [
        new(WarningCodes.QuotesRunOver, string.Create(CultureInfo.InvariantCulture,
            $"Your last {count} took {Rounding.Trim(Rounding.Nearest(median, 2))} times the hours quoted; nothing here is raised for that."),
            "/lines"),
    ];

    /// <summary>What an issued quote would cost by now.</summary>
    /// <param name="issued">Its floor total when it was issued.</param>
    /// <param name="now">Its floor total now.</param>
    public static IEnumerable<Warning> OfMoved(decimal issued, decimal now) => issued == now ? [] :
    [
        new(WarningCodes.CostsMovedSince, string.Create(CultureInfo.InvariantCulture,
            $"The floor total was {issued} when the quote was issued and would be {now} now."), "/lines"),
    ];
}
