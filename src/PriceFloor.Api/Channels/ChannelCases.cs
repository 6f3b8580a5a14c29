using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Channels;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class ChannelCases
{
    /// <summary>The ways of selling that are met most.</summary>
    public static readonly IReadOnlyList<MainCase> Channels =
    [
        new("retail", "An own web shop with a card fee.", Examples.Channel, Examples.StoredChannel)
        {
            At = new Dictionary<string, string> { ["key"] = "web" },
        },
        new("wholesale", "Shops that buy outright and sell on.", """{"name":"Shops that buy outright","sells":"wholesale","currency":"USD"}""", """
        {"key":"shops","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","name":"Shops that buy outright","sells":"wholesale","currency":"USD","shopShare":0,"fees":[],"salesTax":{"rate":0,"included":false},"shipping":{"charged":0.00,"cost":0.00,"returnCost":0.00},"piecesPerOrder":1,"costPerPiece":0.00,"returns":{"share":0,"resaleShare":0,"feesRefunded":false},"priceStep":0.01,"priceEnding":0.00}
        """) { At = new Dictionary<string, string> { ["key"] = "shops" } },
        new("consignment", "A gallery that keeps a share of each sale, and a fee that is never less or more than so much.",
            """{"name":"Gallery","sells":"retail","currency":"USD","shopShare":0.4,"fees":[{"name":"handling","rate":0.05,"minimum":1.00,"maximum":12.00}]}""",
            """
            {"key":"gallery","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","name":"Gallery","sells":"retail","currency":"USD","shopShare":0.4,"fees":[{"name":"handling","rate":0.05,"fixed":0.00,"of":"price","minimum":1.00,"maximum":12.00}],"salesTax":{"rate":0,"included":false},"shipping":{"charged":0.00,"cost":0.00,"returnCost":0.00},"piecesPerOrder":1,"costPerPiece":0.00,"returns":{"share":0,"resaleShare":0,"feesRefunded":false},"priceStep":0.01,"priceEnding":0.00}
            """) { At = new Dictionary<string, string> { ["key"] = "gallery" } },
        new("fair", "A stall over the pieces that it sells, sales tax in the price, prices in whole fives.",
            """{"name":"Summer fair","sells":"retail","currency":"USD","salesTax":{"rate":0.08,"included":true},"stall":{"cost":180,"pieces":30},"priceStep":5.00}""",
            """
            {"key":"fair","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","name":"Summer fair","sells":"retail","currency":"USD","shopShare":0,"fees":[],"salesTax":{"rate":0.08,"included":true},"shipping":{"charged":0.00,"cost":0.00,"returnCost":0.00},"piecesPerOrder":1,"costPerPiece":0.00,"stall":{"cost":180.00,"pieces":30},"returns":{"share":0,"resaleShare":0,"feesRefunded":false},"priceStep":5.00,"priceEnding":0.00}
            """) { At = new Dictionary<string, string> { ["key"] = "fair" } },
    ];
}
