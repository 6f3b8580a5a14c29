using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.AccessKeys;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class AccessKeyCases
{
    /// <summary>What a shop needs, and less than that.</summary>
    public static readonly IReadOnlyList<MainCase> Keys =
    [
        new("shop", "Verdict, floor and target price, nothing that reveals costs.", Examples.KeyRequest, Examples.Key),
        new("one-profile", "The verdict alone, for what counts on one profile, until the end of the year.",
            """{"name":"gallery-plugin","scopes":["verdict"],"expires":"2028-01-01T00:00:00Z","profiles":["main"]}""", """
            {"name":"gallery-plugin","scopes":["verdict"],"createdAt":"2027-01-02T09:00:00.000000Z","expires":"2028-01-01T00:00:00.000000Z","profiles":["main"],"key":"pf_..."}
            """),
    ];
}
