using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.AccessKeys;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class AccessKeyCases
{
    private static readonly ExampleFolder s_files = new(typeof(AccessKeyCases));

    /// <summary>What a shop needs, and less than that.</summary>
    public static readonly IReadOnlyList<MainCase> Keys =
    [
        new("shop", "Verdict, floor and target price, nothing that reveals costs.",
            s_files["createKey.shop.request.json"], s_files["createKey.shop.answer.json"]),
        new("one-profile", "Only the verdict, for one profile's designs, until the end of the year.",
            s_files["createKey.one-profile.request.json"], s_files["createKey.one-profile.answer.json"]),
    ];
}
