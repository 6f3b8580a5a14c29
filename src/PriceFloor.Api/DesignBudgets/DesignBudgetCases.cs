using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.DesignBudgets;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class DesignBudgetCases
{
    /// <summary>Both ways round.</summary>
    public static readonly IReadOnlyList<MainCase> DesignBudget =
    [
        new("materials-given", "How many minutes are left for the bench.", Examples.DesignBudget, Examples.DesignBudgetAnswer),
        new("minutes-given", "How much is left for materials.", """{"profile":"main","channel":"web","price":58.00,"minutes":90}""", """
        {"currency":"USD","price":58.00,"channel":"web","netProceeds":56.36,"minutes":90,"materials":11.35,"perBenchHour":30.00,"soldShare":1,"channels":[{"channel":"fair","netProceeds":47.70,"minutes":90,"materials":2.70},{"channel":"gallery","netProceeds":31.90,"minutes":90,"materials":null,"reason":"time-takes-it-all"},{"channel":"shops","netProceeds":58.00,"minutes":90,"materials":13.00},{"channel":"web","netProceeds":56.36,"minutes":90,"materials":11.35}],"basis":{"profile":"main@1","channel":"web@1","channels":["fair@1","gallery@1","shops@1","web@1"]},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/channel/salesTax","value":0},{"pointer":"#/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/channel/fees"}]}
        """),
    ];
}
