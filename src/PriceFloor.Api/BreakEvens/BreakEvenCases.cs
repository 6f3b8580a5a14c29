using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.BreakEvens;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class BreakEvenCases
{
    /// <summary>At a price, and beside a plan.</summary>
    public static readonly IReadOnlyList<MainCase> BreakEven =
    [
        new("at-a-price", "How many must sell at this price.", null, Examples.BreakEven)
        {
            At = new Dictionary<string, string> { ["price"] = "120.00" },
        },
        new("beside-a-plan", "And how far a plan of 700 pieces is above that.", null, """
        {"currency":"USD","price":120.00,"contribution":116.87,"units":514,"revenue":61680.00,"benchHours":1028,"capacity":1000,"withinCapacity":true,"shareOfYear":0.514,"marginOfSafety":0.265714,"operatingLeverage":3.751158,"basis":{"profile":"main@1","design":"RB-014@1","channel":"web@1"},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/design/making/goodShare","value":1},{"pointer":"#/channel/salesTax","value":0},{"pointer":"#/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/channel/fees"}]}
        """) { At = new Dictionary<string, string> { ["price"] = "120.00", ["planned"] = "700" } },
    ];

    /// <summary>One line and several.</summary>
    public static readonly IReadOnlyList<MainCase> BreakEvenOfMix =
    [
        new("with-a-surplus", "One design, with money left over.", Examples.Mix, Examples.MixBreakEven),
        new("two-designs", "Three pendants for each pair of earrings.",
            """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","price":120.00,"ratio":3},{"sku":"ST-010","channel":"web","price":45.00,"ratio":1}]}""",
            """
            {"currency":"USD","benchMustEarn":60000.00,"contributionPerMixUnit":394.28,"mixUnits":152.176118,"lines":[{"sku":"RB-014","channel":"web","price":120.00,"ratio":3,"contribution":116.87,"units":457,"revenue":54840.00,"benchHours":914},{"sku":"ST-010","channel":"web","price":45.00,"ratio":1,"contribution":43.67,"units":153,"revenue":6885.00,"benchHours":127.5}],"revenue":61725.00,"benchHours":1041.5,"withinCapacity":true,"shareOfYear":0.52075,"basis":{"profile":"main@1","lines":[{"profile":"main@1","design":"RB-014@1","channel":"web@1"},{"profile":"main@1","design":"ST-010@1","channel":"web@1"}]},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/lines/0/design/making/goodShare","value":1},{"pointer":"#/lines/0/channel/salesTax","value":0},{"pointer":"#/lines/0/channel/returns","value":0},{"pointer":"#/lines/1/channel/salesTax","value":0},{"pointer":"#/lines/1/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/lines/0/channel/fees"},{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/lines/1/channel/fees"}]}
            """),
    ];
}
