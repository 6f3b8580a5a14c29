using System.Globalization;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.OrderChecks;

/// <summary>A line of an order found in the store: pieces of one design at a price.</summary>
/// <param name="Floor">The design's floor.</param>
/// <param name="Item">The line in terms of the model.</param>
/// <param name="At">Its pointer in the order, such as <c>/items/0</c>.</param>
/// <param name="Listed">The listed price, if the line gives none.</param>
public sealed record OrderedPiece(DesignFloor Floor, OrderItem Item, string At, Stored<ListedPrice>? Listed = null)
{
    /// <summary>An item, at its listed price if it gives none; or why there is none, all faults at once.</summary>
    public static Outcome<OrderedPiece> OfItem(OrderSource source, OrderItemRequest item, int index)
    {
        var at = string.Create(CultureInfo.InvariantCulture, $"items/{index}");
        var floor = FloorOf(source, item.Sku, at);
        if (floor.Found is not { } found || source.Channel is not { } channel)
            return floor.Faults.ToList();
        var money = Currency.Of(channel.Document.Currency);
        if (item.Price is { } given)
            return ChannelRules.TooFine(given, "price", money) is { } detail
                ? RequestFault.Invalid(source.Place.Error($"{at}/price", FaultCodes.TooManyDecimals, detail))
                : new OrderedPiece(found, new OrderItem(found.Floor.UnitCost, (int)item.Pieces, given), $"/{at}");
        if (source.Catalogue.ListedUnder(item.Sku, found.Design, channel.Key) is { } listed)
            return new OrderedPiece(found, new OrderItem(found.Floor.UnitCost, (int)item.Pieces, listed.Document.Price), $"/{at}", listed);
        var none = source.Place.Error($"{at}/price", FaultCodes.NoPrice,
            $"No price is listed for \"{item.Sku}\" on \"{channel.Key}\"; give one, or list it first.");
        return RequestFault.CannotCompute(none.Code, none.Detail) with { Error = none };
    }

    /// <summary>A gift, or why there is none.</summary>
    public static Outcome<OrderedPiece> OfGift(OrderSource source, OrderGiftRequest gift, int index)
    {
        var at = string.Create(CultureInfo.InvariantCulture, $"gifts/{index}");
        var floor = FloorOf(source, gift.Sku, at);
        return floor.Found is { } found
            ? new OrderedPiece(found, new OrderItem(found.Floor.UnitCost, (int)gift.Pieces, 0), $"/{at}")
            : floor.Faults.ToList();
    }

    private static Outcome<DesignFloor> FloorOf(OrderSource source, string sku, string at)
    {
        RequestFault Unknown(Code code, string detail) => RequestFault.Unknown(source.Place.Error($"{at}/sku", code, detail));
        if (source.Catalogue.DesignNamed(sku) is not { } design)
            return Unknown(InputCodes.UnknownDesign,
                $"There is no design \"{sku}\"{(source.MayRead ? source.Catalogue.HintOfDesign(sku) : "")}; case counts.");
        if (source.Catalogue.Profile(design.Document.Profile) is not { } profile)
            return Unknown(InputCodes.UnknownProfile, source.MayRead
                ? $"The design's profile \"{design.Document.Profile}\" did not exist at that time."
                : "The design's profile did not exist at that time.");
        var floor = source.Catalogue.Floor(profile, design);
        if (floor.Found is not null)
            return floor;
        return floor.Faults.FirstOrDefault(fault => fault.Code == FaultCodes.UnknownMaterial) is { } lacking
            ? Unknown(FaultCodes.UnknownMaterial,
                source.MayRead ? lacking.Detail : "The design uses a material that its profile's price list does not have.")
            : floor.Faults.ToList();
    }
}

/// <summary>What the lines of an order are looked up in.</summary>
/// <param name="Catalogue">The documents of one moment.</param>
/// <param name="Channel">The channel; null if there is none of that key.</param>
/// <param name="Place">Where the order is in the request.</param>
/// <param name="MayRead">Whether the caller may learn which names exist.</param>
public sealed record OrderSource(Catalogue Catalogue, Stored<Channel>? Channel, Place Place, bool MayRead);
