using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Planning;

/// <summary>
/// The smallest change of each kind that alone brings a price to its floor or its target. Nothing here offers time that safety depends on, and
/// long weeks are flagged, not advised.
/// </summary>
public sealed class Remedies
{
    private static readonly RemedyKind[] s_balanced = [RemedyKind.WorkFaster, RemedyKind.CheaperMaterials, RemedyKind.SpendLess];

    private readonly RemedyCase _case;

    private Remedies(PriceCheck check, RemedyGoal goal, IReadOnlyList<OtherChannel> others)
    {
        (Check, Goal, _case) = (check, goal, new RemedyCase(check, goal));
        var all = Computed(new ChannelRemedies(_case, others)).ToList();
        All = [.. all.OrderBy(Rank).ThenBy(remedy => decimal.Abs(remedy.By ?? 0)).ThenBy(remedy => remedy.Kind)];
        Balanced = _case.Target is null && _case.CanBeHelped
            ? BalancedRemedy.Of(Figures, [.. s_balanced.Where(kind => all.Exists(remedy => remedy.Kind == kind && remedy.Possible))])
            : null;
    }

    public PriceCheck Check { get; }

    public RemedyGoal Goal { get; }

    /// <summary>What the ways are computed from, toward the floor.</summary>
    public RemedyFigures Figures => _case.Floor;

    /// <summary>What the target asks besides; null toward the floor, and on a wholesale channel.</summary>
    public RemedyFigures? TowardTarget => _case.Target;

    /// <summary>False if selling at this price brings the studio nothing: then only another price, channel or term of the channel can help.</summary>
    public bool CanBeHelped => _case.CanBeHelped;

    /// <summary>Less for bench time to recover in the year: the larger of what floor and target ask.</summary>
    public decimal Cut => _case.Cut;

    /// <summary>Every way: a higher price first, then by the size of the change, then those that cannot be.</summary>
    public IReadOnlyList<Remedy> All { get; }

    /// <summary>Null if none of its three ways is possible, and toward a target.</summary>
    public BalancedRemedy? Balanced { get; }

    /// <summary>Refused with <c>too-large</c> if figures pass exactness.</summary>
    /// <param name="check">The price.</param>
    /// <param name="goal">What it is to be brought to.</param>
    /// <param name="others">The studio's other channels in the same currency, by key; none if left out.</param>
    public static Outcome<Remedies> Of(PriceCheck check, RemedyGoal goal = RemedyGoal.Floor, IReadOnlyList<OtherChannel>? others = null) =>
        Outcome<Remedies>.Guard(() => new Remedies(check, goal, others ?? []));

    private IEnumerable<Remedy> Computed(ChannelRemedies channel)
    {
        var (piece, year) = (new PieceRemedies(_case), new YearRemedies(_case));
        Func<Remedy>[] ofTheFloor = [piece.Faster, year.Spend, piece.Materials, piece.Yield, year.Taxable, year.Net, piece.NewMinutes,
            piece.NewMaterials, year.Hours];
        return
        [
            Raise(),
            .. ofTheFloor.Select((way, i) => Barred(RemedyKind.WorkFaster + i) ?? way()),
            channel.Shipping(), channel.PiecesAnOrder(), channel.ShopShare(), channel.Stall(), channel.Discount(), channel.Elsewhere(),
        ];
    }

    private static int Rank(Remedy remedy) =>
        remedy.Kind == RemedyKind.RaiseThePrice ? 0 : !remedy.Possible ? 3 : remedy.By is null ? 2 : 1;

    private Remedy Raise()
    {
        var money = _case.Money;
        var now = Rounding.WithDecimals(Check.Sale.Price, money.Decimals);
        var enough = Rounding.WithDecimals(_case.Target is null ? Check.Prices.FloorPrice : Check.Prices.TargetPrice, money.Decimals);
        return _case.IsReached
            ? _case.Unchanged(RemedyKind.RaiseThePrice, now)
            : RemedyCase.Possible(RemedyKind.RaiseThePrice, now, enough,
                $"a price of {RemedyWords.Amount(enough, money)} instead of {RemedyWords.Amount(now, money)}");
    }

    /// <summary>Why nothing that moves the piece's own floor can help at all; null if something may.</summary>
    private Remedy? Barred(RemedyKind kind) =>
        !_case.CanBeHelped
            ? RemedyCase.Not(kind, null, RemedyReasons.NothingReachesTheStudio,
                "Selling at this price costs as much as it brings, before a minute of work is paid; only another price, channel or term of the "
                + "channel can help.")
        : !_case.IsReached && _case.ListedWholesaleDecides
            ? RemedyCase.Not(kind, null, RemedyReasons.ListedWholesaleDecides,
                "What shops pay by the listed wholesale price makes the retail target higher than this price, whatever the piece costs.")
        : null;
}
