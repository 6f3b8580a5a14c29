using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Orders;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Findings;

/// <summary>What a channel's orders say of it.</summary>
internal sealed class ChannelFindings
{
    private const int FewOrders = 8, FewSold = 20, FewReturned = 5, FewEvents = 3, SettledDays = 45, EventDays = 7;
    private const decimal MostShare = 0.9999m;

    private readonly Channel _channel;
    private readonly IReadOnlyList<SoldOrder> _orders;
    private readonly EvidenceChoices _choices;
    private readonly List<Found<Channel>> _found = [];

    private ChannelFindings(Channel channel, IReadOnlyList<SoldOrder> orders, EvidenceChoices choices) =>
        (_channel, _orders, _choices) = (channel, orders, choices);

    public static IReadOnlyList<Found<Channel>> Of(Channel channel, IReadOnlyList<SoldOrder> orders, Func<Movement, decimal?> listed,
        EvidenceChoices choices)
    {
        var findings = new ChannelFindings(channel, orders, choices);
        findings.PiecesPerOrder();
        findings.Returns();
        findings.Stall();
        findings.Discount(listed);
        findings.Fees();
        return findings._found;
    }

    private void PiecesPerOrder()
    {
        if (Ratio.Of([.. _orders.Select(order => new RatioPart(order.Pieces, 1))])?.At(_choices.Level, Estimate.ShareDecimals, least: 1)
            is { } pieces)
            Add("/piecesPerOrder", pieces, (_orders.Count, "orders", FewOrders), _channel.PiecesPerOrder,
                channel => channel with { PiecesPerOrder = pieces.Value });
    }

    /// <summary>Only sales that are old enough for their returns to have come; pieces that can be sold again of all that came back.</summary>
    private void Returns()
    {
        var old = _orders.Where(order => order.On.AddDays(SettledDays) <= _choices.To).ToList();
        if (LotShare.Of([.. old.Select(order => new Lot(order.Pieces, order.Lines.Sum(line => line.Returned)))]) is { } share)
        {
            var at = share.At(_choices.Level);
            Add("/returns/share", at, (share.Pieces, "pieces sold", FewSold), _channel.Returns.Share,
                channel => channel with { Returns = channel.Returns with { Share = decimal.Min(MostShare, at.Value) } }, WorthOf(share));
        }

        var back = _orders.Where(order => order.Lines.Any(line => line.Returned > 0)).ToList();
        if (LotShare.Of([.. back.Select(order => new Lot(order.Lines.Sum(line => line.Returned), order.Lines.Sum(line => line.Resold)))])
            is { } resale)
        {
            var at = resale.At(_choices.Level);
            Add("/returns/resaleShare", at, (resale.Pieces, "pieces returned", FewReturned), _channel.Returns.ResaleShare,
                channel => channel with { Returns = channel.Returns with { ResaleShare = at.Value } }, WorthOf(resale));
        }
    }

    /// <summary>A stall's days that are no more than a week apart are one event.</summary>
    private void Stall()
    {
        if (_channel.Stall is not { } stall)
            return;
        var events = new List<RatioPart>();
        foreach (var name in _orders.SelectMany(order => order.Lines).GroupBy(line => line.Line.Stall ?? "").OrderBy(group => group.Key,
            StringComparer.Ordinal))
        {
            var last = DateOnly.MinValue;
            foreach (var line in name.OrderBy(line => line.Line.On))
            {
                if (events.Count == 0 || last == DateOnly.MinValue || line.Line.On > last.AddDays(EventDays))
                    events.Add(new RatioPart(0, 1));
                events[^1] = new RatioPart(events[^1].Amount + line.Line.Pieces, 1);
                last = line.Line.On;
            }
        }

        if (Ratio.Of(events)?.At(_choices.Level, Estimate.MinuteDecimals) is { } pieces)
            Add("/stall/pieces", pieces, (events.Count, "events", FewEvents), stall.Pieces,
                channel => channel with { Stall = channel.Stall! with { Pieces = pieces.Value } });
    }

    private void Discount(Func<Movement, decimal?> listed)
    {
        var parts = _orders.Select(order => order.Lines.Where(line => line.Line.Grade == Grade.Good && line.Line.Paid is not null)
                .Select(line => (line.Line, Listed: listed(line.Line) * line.Line.Pieces)).Where(line => line.Listed > 0).ToList())
            .Where(lines => lines.Count > 0)
            .Select(lines => new RatioPart(lines.Sum(line => line.Listed!.Value - line.Line.Paid!.Value), lines.Sum(line => line.Listed!.Value)))
            .ToList();
        if (Ratio.Of(parts)?.At(_choices.Level, Estimate.ShareDecimals) is not { } found)
            return;
        var discount = found with { Value = decimal.Clamp(found.Value, 0, MostShare), High = found.High is { } high ? decimal.Max(0, high) : null };
        Add("/usualDiscount", discount, (parts.Count, "orders", FewOrders), _channel.UsualDiscount,
            channel => channel with { UsualDiscount = discount.Value });
    }

    /// <summary>Fees are shown and never drafted: which of them is wrong, the orders do not say.</summary>
    private void Fees()
    {
        if (FeeReplay.Of(_orders, _channel) is not { } replay)
            return;
        var money = Currency.Of(_channel.Currency);
        var (charged, expected) = (money.Round(replay.Charged), money.Round(replay.Expected));
        _found.Add(new Found<Channel>(
            new Finding
            {
                Pointer = "/fees",
                Estimate = new Estimate(charged, null, null),
                Observations = replay.Orders.Count,
                Of = "orders",
                Stored = expected,
                Says = replay.Orders.Count < FewOrders ? Says.TooFew : !replay.Differs ? Says.Agrees
                    : charged > expected ? Says.StoredTooLow : Says.StoredTooHigh,
                Fees = replay,
            },
            null));
    }

    private void Add(string pointer, Estimate estimate, (long Count, string Of, int Few) seen, decimal stored, Func<Channel, Channel> change,
        decimal? worth = null) =>
        _found.Add(new Found<Channel>(
            new Finding
            {
                Pointer = pointer,
                Estimate = estimate,
                Observations = seen.Count,
                Of = seen.Of,
                Worth = worth,
                Stored = stored,
                Says = Finding.Judge(estimate, stored, seen.Count >= seen.Few),
            },
            change));

    private static decimal? WorthOf(LotShare share) => share.Together == 1 ? null : Rounding.Nearest(share.Worth, 0);
}
