using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.YearPlans;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class YearPlanCases
{
    /// <summary>A year that closes and one that does not.</summary>
    public static readonly IReadOnlyList<MainCase> YearPlan =
    [
        new("closes", "Enough is sold.", Examples.YearPlan, Examples.YearPlanAnswer),
        new("falls-short", "Two designs, and still too little.",
            """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","price":120.00,"units":300},{"sku":"ST-010","channel":"web","price":45.00,"units":200}]}""",
            """
            {"currency":"USD","closes":false,"surplusBeforeTax":0.00,"surplusAfterTax":0.00,"shortfall":16205.00,"benchMustEarn":60000.00,"contribution":43795.00,"revenue":45000.00,"proceeds":43795.00,"benchHours":766.6667,"withinLimits":true,"limits":[{"name":"hours","kind":"bench-hours","used":766.6667,"available":2000,"within":true}],"lines":[{"sku":"RB-014","channel":"web","price":120.00,"units":300,"verdict":"meets-target","proceeds":35061.00,"materials":0.00,"benchHours":600,"contribution":35061.00,"contributionPerBenchHour":58.44,"rank":1},{"sku":"ST-010","channel":"web","price":45.00,"units":200,"verdict":"below-target","proceeds":8734.00,"materials":0.00,"benchHours":166.6667,"contribution":8734.00,"contributionPerBenchHour":52.40,"rank":2}],"materialSpend":{"planned":0.00,"bought":0.00,"difference":0.00},"basis":{"profile":"main@1","lines":[{"profile":"main@1","design":"RB-014@1","channel":"web@1"},{"profile":"main@1","design":"ST-010@1","channel":"web@1"}]},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/lines/0/design/making/goodShare","value":1},{"pointer":"#/lines/0/channel/salesTax","value":0},{"pointer":"#/lines/0/channel/returns","value":0},{"pointer":"#/lines/1/channel/salesTax","value":0},{"pointer":"#/lines/1/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/lines/0/channel/fees"},{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/lines/1/channel/fees"}]}
            """),
    ];

    /// <summary>Both goals.</summary>
    public static readonly IReadOnlyList<MainCase> BestPlan =
    [
        new("maximum-surplus", "The largest surplus.", Examples.BestPlan, Examples.BestPlanAnswer),
        new("fewest-hours", "The fewest bench hours that still close the year.",
            """{"profile":"main","goal":"fewest-hours","lines":[{"sku":"RB-014","channel":"web","price":120.00},{"sku":"ST-010","channel":"web","price":45.00,"maximum":300}]}""",
            """
            {"currency":"USD","closes":true,"surplusBeforeTax":12.12,"surplusAfterTax":12.12,"shortfall":0.00,"benchMustEarn":60000.00,"contribution":60012.12,"revenue":61620.00,"proceeds":60012.12,"benchHours":1027.3333,"withinLimits":true,"limits":[{"name":"hours","kind":"bench-hours","used":1027.3333,"available":2000,"within":true,"binds":false,"worthOfOneMore":0}],"lines":[{"sku":"RB-014","channel":"web","price":120.00,"units":512,"verdict":"meets-target","proceeds":59837.44,"materials":0.00,"benchHours":1024,"contribution":59837.44,"contributionPerBenchHour":58.44,"rank":1},{"sku":"ST-010","channel":"web","price":45.00,"units":4,"verdict":"below-target","proceeds":174.68,"materials":0.00,"benchHours":3.3333,"contribution":174.68,"contributionPerBenchHour":52.40,"rank":2}],"materialSpend":{"planned":0.00,"bought":0.00,"difference":0.00},"best":{"goal":"fewest-hours","proven":true},"basis":{"profile":"main@1","lines":[{"profile":"main@1","design":"RB-014@1","channel":"web@1"},{"profile":"main@1","design":"ST-010@1","channel":"web@1"}]},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/lines/0/design/making/goodShare","value":1},{"pointer":"#/lines/0/channel/salesTax","value":0},{"pointer":"#/lines/0/channel/returns","value":0},{"pointer":"#/lines/1/channel/salesTax","value":0},{"pointer":"#/lines/1/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/lines/0/channel/fees"},{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/lines/1/channel/fees"}]}
            """),
    ];
}
