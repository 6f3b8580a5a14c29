using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Planning;

/// <summary>The ways that change the channel's terms, or the channel. They move what reaches the studio, never the target.</summary>
internal sealed class ChannelRemedies(RemedyCase one, IReadOnlyList<OtherChannel> others)
{
    private const int MostPiecesAnOrder = 1000, MostPiecesAStall = 1_000_000;

    /// <summary>The finest step of a share: 6 decimals.</summary>
    private const decimal ShareStep = 0.000001m;

    private Channel Channel => one.Check.Prices.Terms.Channel;

    /// <summary>True toward a target that the price before tax does not reach: no term of the channel moves it.</summary>
    private bool TargetIsAbove => one.Target is not null && !one.Check.Sale.BeforeTax.Reaches(one.Check.Prices.Floor.Target);

    public Remedy Shipping()
    {
        const RemedyKind Kind = RemedyKind.ChargeMoreShipping;
        var before = Rounding.WithDecimals(Channel.Shipping.Charged, one.Money.Decimals);
        if (Channel.Shipping is { Charged: 0, Cost: 0 })
            return RemedyCase.Not(Kind, before, RemedyReasons.NoShipping, "Nothing is sent on this channel: it has no shipping to charge for.");
        if (one.IsReached || TargetIsAbove)
            return AsItIs(Kind, before);
        var unit = one.Money.MinorUnit;
        var least = Search.FirstFrom(Rounding.Down(Channel.Shipping.Charged / unit, 0) + 1, Limits.HighestPrice / unit,
            units => Holds(Channel with { Shipping = Channel.Shipping with { Charged = units * unit } }));
        if (least is not { } enough)
            return NotEnough(Kind, before);
        var after = Rounding.WithDecimals(enough * unit, one.Money.Decimals);
        return RemedyCase.Possible(Kind, before, after,
            $"{RemedyWords.Amount(after, one.Money)} charged for shipping an order instead of {RemedyWords.Amount(before, one.Money)}");
    }

    public Remedy PiecesAnOrder()
    {
        const RemedyKind Kind = RemedyKind.MorePiecesAnOrder;
        var before = Channel.PiecesPerOrder;
        if (Channel.Shipping is { Charged: 0, Cost: 0, ReturnCost: 0 } && Channel.Selling.MinutesPerOrder == 0
                && !Channel.Fees.Any(fee => fee.Fixed > 0 || fee.Minimum > 0 || fee.Maximum is not null))
            return RemedyCase.Not(Kind, before, RemedyReasons.NothingPerOrder, "Nothing on this channel is paid or worked once an order.");
        if (one.IsReached || TargetIsAbove)
            return AsItIs(Kind, before);
        for (var pieces = Rounding.Down(before, 0) + 1; pieces <= MostPiecesAnOrder; pieces++) // one by one: the net need not rise with them
            if (Holds(Channel with { PiecesPerOrder = pieces }))
                return RemedyCase.Possible(Kind, before, pieces,
                    $"{RemedyWords.Plain(pieces)} pieces an order on average instead of {RemedyWords.Plain(before)}");
        return NotEnough(Kind, before);
    }

    public Remedy ShopShare()
    {
        const RemedyKind Kind = RemedyKind.LowerShopShare;
        var before = Channel.ShopShare;
        if (before == 0)
            return RemedyCase.Not(Kind, before, RemedyReasons.NoShopShare, "No shop keeps a share of the price on this channel.");
        if (one.IsReached || TargetIsAbove)
            return AsItIs(Kind, before);
        return Largest(before, share => Channel with { ShopShare = share }) is { } after
            ? RemedyCase.Possible(Kind, before, after, $"the shop keeps {RemedyWords.Percent(after)} instead of {RemedyWords.Percent(before)}")
            : NotEnough(Kind, before);
    }

    public Remedy Stall()
    {
        const RemedyKind Kind = RemedyKind.FullerStall;
        if (Channel.Stall is not { } stall || stall is { Cost: 0, Hours: 0 })
            return RemedyCase.Not(Kind, Channel.Stall?.Pieces, RemedyReasons.NoStall, "There is no stall on this channel that costs money or time.");
        if (one.IsReached || TargetIsAbove)
            return AsItIs(Kind, stall.Pieces);
        var least = Search.FirstFrom(Rounding.Down(stall.Pieces, 0) + 1, MostPiecesAStall,
            pieces => Holds(Channel with { Stall = stall with { Pieces = pieces } }));
        return least is { } after
            ? RemedyCase.Possible(Kind, stall.Pieces, after,
                $"{RemedyWords.Plain(after)} pieces a stall instead of {RemedyWords.Plain(stall.Pieces)}")
            : NotEnough(Kind, stall.Pieces);
    }

    public Remedy Discount()
    {
        const RemedyKind Kind = RemedyKind.LessDiscount;
        var before = Channel.UsualDiscount;
        if (before == 0)
            return RemedyCase.Not(Kind, before, RemedyReasons.NoDiscount, "No usual discount is taken off on this channel.");
        if (one.IsReached || TargetIsAbove)
            return AsItIs(Kind, before);
        return Largest(before, share => Channel with { UsualDiscount = share }) is { } after
            ? RemedyCase.Possible(Kind, before, after, $"a usual discount of {RemedyWords.Percent(after)} instead of {RemedyWords.Percent(before)}")
            : NotEnough(Kind, before);
    }

    public Remedy Elsewhere()
    {
        const RemedyKind Kind = RemedyKind.SellElsewhere;
        if (one.IsReached)
            return one.Unchanged(Kind, null);
        var found = others.Select(At).OfType<SoldElsewhere>().ToList();
        return found.Count == 0
            ? RemedyCase.Not(Kind, null, RemedyReasons.NowhereElse, "On no other channel does the piece hold at its listed price or at this one.")
            : RemedyCase.Possible(Kind, null, null, string.Join(", ", found.Select(other =>
                $"{(other.Listed ? "listed" : "from")} {RemedyWords.Amount(other.Price, one.Money)} on {other.Channel}"))) with
            { Channels = found };
    }

    private SoldElsewhere? At(OtherChannel other)
    {
        if (other.Listed is { } listed && IsGoodEnough(other.Prices.VerdictOf(listed)))
            return new SoldElsewhere(other.Key, Rounding.WithDecimals(listed, one.Money.Decimals), Listed: true);
        var least = one.Target is null ? other.Prices.FloorPrice : other.Prices.TargetPrice;
        return least <= one.Check.Sale.Price ? new SoldElsewhere(other.Key, Rounding.WithDecimals(least, one.Money.Decimals), Listed: false) : null;
    }

    private bool IsGoodEnough(Verdict verdict) => one.Target is null ? verdict != Verdict.BelowFloor : verdict == Verdict.MeetsTarget;

    private Remedy AsItIs(RemedyKind kind, decimal before) => one.IsReached
        ? one.Unchanged(kind, before)
        : RemedyCase.Not(kind, before, RemedyReasons.MovesNoTarget,
            "The target is a price before tax: what the channel takes does not move it. Raise the price, or lower what the piece costs.");

    private static Remedy NotEnough(RemedyKind kind, decimal before) =>
        RemedyCase.Not(kind, before, RemedyReasons.NotEnough, "Even the best value of this figure alone falls short.");

    private decimal? Largest(decimal today, Func<decimal, Channel> with)
    {
        var most = Rounding.Down(today / ShareStep, 0);
        return Search.FirstFrom(0, most, down => Holds(with((most - down) * ShareStep))) is { } steps ? (most - steps) * ShareStep : null;
    }

    /// <summary>Whether the price carries its share on a channel with other terms.</summary>
    private bool Holds(Channel channel) =>
        Sale.Of(one.Check.Sale.Price, channel).Net.Reaches(new ChannelFloor(one.UnitCost, channel).Floor);
}
