using PriceFloor.Api.Http;

namespace PriceFloor.Api.ListedPrices;

/// <summary>
/// An empty price in a sheet takes no listing away: a sheet whose formulas were never calculated would empty a whole shop.
/// </summary>
internal static class EmptyPrice
{
    /// <summary>The fault of a row; if it is an empty price, with how a listing is taken away.</summary>
    /// <param name="fault">The fault.</param>
    /// <param name="price">The heading of the prices.</param>
    public static InputError Told(InputError fault, string price) => fault.Code == FaultCodes.Required && fault.Parameter == price
        ? fault with
        {
            Detail = $"{fault.Detail} That takes no listing away: leave the row out to keep it as it is, or send DELETE to "
                + "/v1/designs/{sku}/prices/{channel}.",
        }
        : fault;
}
