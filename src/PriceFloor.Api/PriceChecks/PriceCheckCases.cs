using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.PriceChecks;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class PriceCheckCases
{
    /// <summary>The three verdicts, and a listing that no design is behind.</summary>
    public static readonly IReadOnlyList<MainCase> PriceCheck =
    [
        new("below-floor", "The price does not carry its part of the year.", Examples.PriceCheckRequest, Examples.PriceCheck),
        new("below-target", "It carries its part, but undercuts shops that buy wholesale.", """{"sku":"RB-014","channel":"web","price":90.00}""", """
        {"verdict":"below-target","carriesItsShare":true,"floorPrice":61.74,"targetPrice":120.00,"price":90.00,"currency":"USD","netProceeds":87.59,"aboveFloor":27.59,"earnedPerBenchHour":43.80,"perBenchHour":30.00,"takeHomePerHourAtThisPrice":31.80,"basis":{"profile":"main@1","design":"RB-014@1","channel":"web@1"},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/design/making/goodShare","value":1},{"pointer":"#/channel/salesTax","value":0},{"pointer":"#/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/channel/fees"}]}
        """),
        new("meets-target", "It carries its part, and shops can sell beside it.", """{"sku":"RB-014","channel":"web","price":120.00}""", """
        {"verdict":"meets-target","carriesItsShare":true,"floorPrice":61.74,"targetPrice":120.00,"price":120.00,"currency":"USD","netProceeds":116.87,"aboveFloor":56.87,"earnedPerBenchHour":58.44,"perBenchHour":30.00,"takeHomePerHourAtThisPrice":46.44,"basis":{"profile":"main@1","design":"RB-014@1","channel":"web@1"},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/design/making/goodShare","value":1},{"pointer":"#/channel/salesTax","value":0},{"pointer":"#/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/channel/fees"}]}
        """),
        new("by-alias", "By another name of the design, in a gallery that keeps a share.",
            """{"sku":"BD-030 / clear","channel":"gallery","price":48.00}""", """
            {"verdict":"meets-target","carriesItsShare":true,"floorPrice":19.98,"targetPrice":21.98,"price":48.00,"currency":"USD","netProceeds":26.40,"aboveFloor":15.41,"earnedPerBenchHour":50.33,"perBenchHour":15.19,"takeHomePerHourAtThisPrice":35.66,"basis":{"profile":"workshop@1","design":"BD-030@1","channel":"gallery@1"},"assumed":[{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/design/making/goodShare","value":1},{"pointer":"#/channel/salesTax","value":0},{"pointer":"#/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/channel/fees"}]}
            """),
        new("unknown-listing", "No design is behind the listing: list it as not described yet.",
            """{"sku":"XX-999","channel":"web","price":58.00}""", """
            {"type":"/problems/unknown-reference","title":"It names something that does not exist","status":422,"detail":"There is no design \"XX-999\"; case counts.","errors":[{"pointer":"#/sku","code":"unknown-design","detail":"There is no design \"XX-999\"; case counts."}],"requestId":"0192f3a4b5c67d8e9fa0b1c2d3e4f506"}
            """) { Problem = ProblemTypes.UnknownReference },
    ];
}
