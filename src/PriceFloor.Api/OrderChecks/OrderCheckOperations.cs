using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.OrderChecks;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class OrderCheckOperations
{
    private static readonly ExampleFolder s_files = new(typeof(OrderCheckOperations));

    private static readonly Operation OrderCheck = new("checkOrders", "Prices", "Does an order carry the share of all its pieces?",
        "One basket: its net, with the fees and the shipping of this order, against the floors of its pieces. Sets, gifts, a discount, an amount "
        + "off, free shipping, and the least order of a channel. The channel's usual discount is not taken off: this buyer pays the prices given. "
        + "One order, an array (at most 1000), or NDJSON without limit, answered in the same format or as Accept says, each in its place. "
        + "Scope verdict: the verdict and carriesItsShare; check: also total and leastTotal; read: also what reveals costs.")
    {
        Answer = typeof(OrderChecksAnswer),
        Cases =
        [
            new("at-listed-prices", "Two pieces at their listed price, which share the postage.",
                s_files["checkOrders.at-listed-prices.request.json"], s_files["checkOrders.at-listed-prices.answer.json"]),
            new("with-a-gift", "A discount and a gift.",
                s_files["checkOrders.with-a-gift.request.json"], s_files["checkOrders.with-a-gift.answer.json"]),
            new("free-shipping-from", "From what amount on may shipping be free?",
                s_files["checkOrders.free-shipping-from.request.json"], s_files["checkOrders.free-shipping-from.answer.json"]),
            new("many", "Several orders, one of them with a fault.",
                s_files["checkOrders.many.request.json"], s_files["checkOrders.many.answer.json"]),
        ],
        Bodies =
        [
            new(Format.Json, typeof(OrderChecksRequest)),
            new(Format.Ndjson, null, s_files["checkOrders.request.ndjson"]),
        ],
        BodyWords = "One order, an array of 1 to 1000, or one after another in lines; each is answered in its place.",
        OtherAnswers = [new(Format.Ndjson, null, s_files["checkOrders.answer.ndjson"])],
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    public static void MapOrderChecks(this RouteGroupBuilder v1)
    {
        v1.MapPost("/order-checks", OrderCheckRoutes.Post).Needs(Scope.Verdict).Offer(Format.Json, Format.Ndjson).Tell(OrderCheck);
    }
}
