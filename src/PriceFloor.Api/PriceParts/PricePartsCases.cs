using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.PriceParts;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class PricePartsCases
{
    private static readonly ExampleFolder s_files = new(typeof(PricePartsCases));

    /// <summary>One channel and its listed price.</summary>
    public static readonly IReadOnlyList<MainCase> PriceParts =
    [
        new("listed-price", "The price listed on one channel.", null, s_files["getPriceParts.listed-price.answer.json"])
        {
            At = new Dictionary<string, string> { ["channel"] = "web" },
        },
    ];
}
