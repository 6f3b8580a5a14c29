using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.PriceChecks;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class PriceCheckCases
{
    private static readonly ExampleFolder s_files = new(typeof(PriceCheckCases));

    /// <summary>The three verdicts, and a listing that no design is behind.</summary>
    public static readonly IReadOnlyList<MainCase> PriceCheck =
    [
        new("below-floor", "The price does not carry its part of the year.",
            s_files["checkPrice.below-floor.request.json"], s_files["checkPrice.below-floor.answer.json"]),
        new("below-target", "It carries its part, but undercuts shops that buy wholesale.",
            s_files["checkPrice.below-target.request.json"], s_files["checkPrice.below-target.answer.json"]),
        new("meets-target", "It carries its part, and shops can sell beside it.",
            s_files["checkPrice.meets-target.request.json"], s_files["checkPrice.meets-target.answer.json"]),
        new("by-alias", "By another name of the design, in a gallery that keeps a share.",
            s_files["checkPrice.by-alias.request.json"], s_files["checkPrice.by-alias.answer.json"]),
        new("unknown-listing", "The listing has no design: list it as not described yet.",
            s_files["checkPrice.unknown-listing.request.json"], s_files["checkPrice.unknown-listing.answer.json"])
        {
            Problem = ProblemTypes.UnknownReference,
        },
    ];
}
