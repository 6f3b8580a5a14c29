using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Channels;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class ChannelCases
{
    private static readonly ExampleFolder s_files = new(typeof(ChannelCases));

    /// <summary>The ways of selling that are met most.</summary>
    public static readonly IReadOnlyList<MainCase> Channels =
    [
        new("retail", "An own web shop with a card fee.", s_files["channel.retail.request.json"], s_files["channel.retail.answer.json"])
        {
            At = new Dictionary<string, string> { ["key"] = "web" },
        },
        new("wholesale", "Shops that buy outright and sell on.",
            s_files["channel.wholesale.request.json"], s_files["channel.wholesale.answer.json"])
        {
            At = new Dictionary<string, string> { ["key"] = "shops" },
        },
        new("consignment", "A gallery that keeps a share of each sale, and a fee that is never less or more than so much.",
            s_files["channel.consignment.request.json"], s_files["channel.consignment.answer.json"])
        {
            At = new Dictionary<string, string> { ["key"] = "gallery" },
        },
        new("fair", "A stall over the pieces that it sells, sales tax in the price, prices in whole fives.",
            s_files["channel.fair.request.json"], s_files["channel.fair.answer.json"])
        {
            At = new Dictionary<string, string> { ["key"] = "fair" },
        },
    ];
}
