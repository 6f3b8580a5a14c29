using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.FloorPrices;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class FloorPriceCases
{
    private static readonly ExampleFolder s_files = new(typeof(FloorPriceCases));

    /// <summary>A stored design on its own profile and on another.</summary>
    public static readonly IReadOnlyList<MainCase> FloorPrice =
    [
        new("own-profile", "On its own profile.", null, s_files["getFloorPrice.own-profile.answer.json"]),
        new("another-profile", "The same piece in a year with a flat tax.", null, s_files["getFloorPrice.another-profile.answer.json"])
        {
            At = new Dictionary<string, string> { ["profile"] = "flat-tax" },
        },
    ];

    /// <summary>Nothing stored, and something stored with something else beside it.</summary>
    public static readonly IReadOnlyList<MainCase> WhatIf =
    [
        new("all-inline", "Nothing needs to be stored.",
            s_files["computeFloorPrice.all-inline.request.json"], s_files["computeFloorPrice.all-inline.answer.json"]),
        new("stored-design-dearer-year", "A stored design in a year that is not stored: the expenses are 6,000 higher.",
            s_files["computeFloorPrice.stored-design-dearer-year.request.json"], s_files["computeFloorPrice.stored-design-dearer-year.answer.json"]),
        new("stored-design-new-channel", "A stored design on a way of selling that is not stored, beside a stored one.",
            s_files["computeFloorPrice.stored-design-new-channel.request.json"], s_files["computeFloorPrice.stored-design-new-channel.answer.json"]),
    ];
}
