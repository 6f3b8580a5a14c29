using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.FloorPrices;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class FloorPriceCases
{
    /// <summary>A stored design on its own profile and on another.</summary>
    public static readonly IReadOnlyList<MainCase> FloorPrice =
    [
        new("own-profile", "On its own profile.", null, Examples.FloorPrice),
        new("another-profile", "The same piece in a year with a flat tax.", null, """
        {"currency":"USD","floor":33.39,"wholesale":33.39,"retail":66.78,"benchHours":1.3,"benchCost":33.38,"materials":0.00,"secondsCredit":0.00,"startsPerGoodPiece":1,"piecesPerYear":960,"channels":[{"channel":"web","currency":"USD","floorPrice":34.46,"targetPrice":66.78,"listedPrice":58.00,"verdict":"below-target"}],"basis":{"profile":"flat-tax@1","design":"RB-014@1","channels":["web@1"]},"assumed":[{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/design/making/goodShare","value":1},{"pointer":"#/channels/0/salesTax","value":0},{"pointer":"#/channels/0/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/channels/0/fees"}]}
        """) { At = new Dictionary<string, string> { ["profile"] = "flat-tax" } },
    ];

    /// <summary>Nothing stored, and something stored with something else beside it.</summary>
    public static readonly IReadOnlyList<MainCase> WhatIf =
    [
        new("all-inline", "Nothing needs to be stored.", Examples.WhatIf, Examples.WhatIfAnswer),
        new("stored-design-dearer-year", "A stored design in a year that is not stored: the expenses are 6,000 higher.",
            """{"profile":{"currency":"USD","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},"expenses":[{"amount":30000,"per":"year"}],"household":[{"amount":3000,"per":"month"}]},"design":"RB-014"}""",
            """
            {"currency":"USD","floor":66.00,"wholesale":66.00,"retail":132.00,"benchHours":2,"benchCost":66.00,"materials":0.00,"secondsCredit":0.00,"startsPerGoodPiece":1,"piecesPerYear":1000,"channels":[],"basis":{"profile":"inline","design":"RB-014@1","channels":[]},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/design/making/goodShare","value":1}],"warnings":[]}
            """),
        new("stored-design-new-channel", "A stored design on a way of selling that is not stored, beside a stored one.",
            """{"design":"RB-014","channels":["web",{"name":"A shop that keeps half","sells":"retail","currency":"USD","shopShare":0.5}]}""", """
            {"currency":"USD","floor":60.00,"wholesale":60.00,"retail":120.00,"benchHours":2,"benchCost":60.00,"materials":0.00,"secondsCredit":0.00,"startsPerGoodPiece":1,"piecesPerYear":1000,"channels":[{"channel":"web","currency":"USD","floorPrice":61.74,"targetPrice":120.00,"listedPrice":58.00,"verdict":"below-floor"},{"channel":"inline","currency":"USD","floorPrice":120.00,"targetPrice":120.00,"listedPrice":null,"verdict":null}],"basis":{"profile":"main@1","design":"RB-014@1","channels":["web@1","inline"]},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/design/making/goodShare","value":1},{"pointer":"#/channels/0/salesTax","value":0},{"pointer":"#/channels/0/returns","value":0},{"pointer":"#/channels/1/salesTax","value":0},{"pointer":"#/channels/1/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/channels/0/fees"}]}
            """),
    ];
}
