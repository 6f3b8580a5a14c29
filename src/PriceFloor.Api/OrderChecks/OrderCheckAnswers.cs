using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;

namespace PriceFloor.Api.OrderChecks;

/// <summary>A checked order as an answer.</summary>
internal static class OrderCheckAnswers
{
    /// <summary>The answer, without what the caller's key may not learn.</summary>
    public static OrderCheckAnswer Of(CheckedOrder found, Caller caller, bool workings)
    {
        var (mayCheck, mayRead) = (caller.May(Scope.Check), caller.May(Scope.Read));
        var money = Currency.Of(found.Channel.Document.Currency);
        var answer = new OrderCheckAnswer
        {
            Verdict = found.Order?.Verdict,
            CarriesItsShare = found.Order?.CarriesItsShare,
            Currency = money.Code,
            Total = mayCheck && found.Order is { } order ? money.Round(order.Total) : null,
            LeastTotal = mayCheck && found.LeastTotal is { } least ? Rounding.WithDecimals(least, money.Decimals) : null,
            LeastOrder = found.LeastOrder?.Answer,
            Basis = BasisOf(found),
            Warnings = WarningAnswer.Of(mayRead ? WarningsOf(found).Distinct() : NotAllowed(found)),
            Assumed = mayRead ? AssumptionAnswer.Of(AssumptionsOf(found).Distinct()) : null,
            Workings = mayRead ? WorkingAnswer.Of(workings, () => WorkingsOf(found)) : null,
        };
        return mayRead && found.Order is { } whole ? WithCosts(answer, found, whole, money) : answer;
    }

    private static OrderCheckAnswer WithCosts(OrderCheckAnswer answer, CheckedOrder found, Order order, Currency money)
    {
        var aboveFloor = money.Round(order.AboveFloor);
        var parts = Rounding.NearestTogether([.. order.AboveFloorOfItems, .. order.AboveFloorOfGifts], aboveFloor, money.Decimals);
        return answer with
        {
            NetProceeds = money.Round(order.Net),
            Floors = money.Round(order.Floors),
            AboveFloor = aboveFloor,
            MostOff = order.MostOff is { } share ? Rounding.Trim(share) : null,
            Items = [.. found.Request.Items.Select((item, i) => new OrderItemAnswer(item.Sku, Rounding.Trim(item.Pieces),
                Rounding.WithDecimals(order.Items[i].Price, money.Decimals), parts[i]))],
            Gifts = [.. found.Request.Gifts.Select((gift, i) =>
                new OrderGiftAnswer(gift.Sku, Rounding.Trim(gift.Pieces), parts[order.Items.Count + i]))],
        };
    }

    private static OrderBasisAnswer BasisOf(CheckedOrder found) => new()
    {
        Profile = found.Items is [var first, ..] ? first.Floor.Profile.Basis : null,
        Channel = found.Channel.Basis,
        Designs = [.. found.Items.Concat(found.Gifts).Select(piece => piece.Floor.Design.Basis).Distinct()],
        ListedPrices = [.. found.Items.Select(item => item.Listed?.Basis).OfType<string>().Distinct()],
    };

    private static IEnumerable<Warning> WarningsOf(CheckedOrder found) => found.Items is not [var first, ..] ? []
        : Warnings.In(first.Floor.Year, found.Catalogue.Today)
            .Concat(found.Items.Concat(found.Gifts).SelectMany(piece =>
                Warnings.In(piece.Floor.Floor.UnitCost).Select(one => one with { Pointer = Below(one.Pointer, piece) })))
            .Concat(Warnings.In(found.Channel.Document, first.Floor.Year, "/channel", found.Catalogue.Channels.Select(other => other.Document)))
            .Concat(NotAllowed(found));

    private static IEnumerable<Warning> NotAllowed(CheckedOrder found)
    {
        var grid = PriceGrid.Of(found.Channel.Document);
        return found.Items.Where(item => !grid.Allows(item.Item.Price)).Select(item => Warnings.NotAllowed($"{item.At}/price"));
    }

    /// <summary>The usual discount is not this buyer's, so nothing rests on it.</summary>
    private static IEnumerable<Assumption> AssumptionsOf(CheckedOrder found) => found.Items is not [var first, ..] ? []
        : Assumed.In(first.Floor.Profile.Document)
            .Concat(found.Items.Concat(found.Gifts).SelectMany(piece =>
                Assumed.In(piece.Floor.Floor.UnitCost).Select(one => one with { Pointer = Below(one.Pointer, piece) })))
            .Concat(Assumed.In(found.Channel.Document, "/channel").Where(one => one.Pointer != "/channel/usualDiscount"));

    private static IEnumerable<Working> WorkingsOf(CheckedOrder found) =>
    [
        .. found.Order is { } order ? Workings.Of(found.Items[0].Floor.Year).Concat(Workings.Of(order)) : [],
        .. found.LeastOrder is { } least ? Workings.Of(least.Orders, least.Designs) : [],
    ];

    /// <summary>What is about the profile is reported once; what is about a design, for its line.</summary>
    private static string Below(string pointer, OrderedPiece piece) =>
        pointer.StartsWith("/profile", StringComparison.Ordinal) ? pointer : piece.At + pointer;
}
