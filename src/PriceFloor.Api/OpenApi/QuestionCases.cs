using PriceFloor.Api.Http;

namespace PriceFloor.Api.OpenApi;

/// <summary>The main cases of questions; a test asks each and compares.</summary>
public static class QuestionCases
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
        new("stored-design-dearer-year", "A stored design in a year that is not stored: the expenses are 6,000 higher.", """{"profile":{"currency":"USD","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},"expenses":[{"amount":30000,"per":"year"}],"household":[{"amount":3000,"per":"month"}]},"design":"RB-014"}""", """
        {"currency":"USD","floor":66.00,"wholesale":66.00,"retail":132.00,"benchHours":2,"benchCost":66.00,"materials":0.00,"secondsCredit":0.00,"startsPerGoodPiece":1,"piecesPerYear":1000,"channels":[],"basis":{"profile":"inline","design":"RB-014@1","channels":[]},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/design/making/goodShare","value":1}],"warnings":[]}
        """),
        new("stored-design-new-channel", "A stored design on a way of selling that is not stored, beside a stored one.", """{"design":"RB-014","channels":["web",{"name":"A shop that keeps half","sells":"retail","currency":"USD","shopShare":0.5}]}""", """
        {"currency":"USD","floor":60.00,"wholesale":60.00,"retail":120.00,"benchHours":2,"benchCost":60.00,"materials":0.00,"secondsCredit":0.00,"startsPerGoodPiece":1,"piecesPerYear":1000,"channels":[{"channel":"web","currency":"USD","floorPrice":61.74,"targetPrice":120.00,"listedPrice":58.00,"verdict":"below-floor"},{"channel":"inline","currency":"USD","floorPrice":120.00,"targetPrice":120.00,"listedPrice":null,"verdict":null}],"basis":{"profile":"main@1","design":"RB-014@1","channels":["web@1","inline"]},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/design/making/goodShare","value":1},{"pointer":"#/channels/0/salesTax","value":0},{"pointer":"#/channels/0/returns","value":0},{"pointer":"#/channels/1/salesTax","value":0},{"pointer":"#/channels/1/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/channels/0/fees"}]}
        """),
    ];

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
        new("by-alias", "By another name of the design, in a gallery that keeps a share.", """{"sku":"BD-030 / clear","channel":"gallery","price":48.00}""", """
        {"verdict":"meets-target","carriesItsShare":true,"floorPrice":19.98,"targetPrice":21.98,"price":48.00,"currency":"USD","netProceeds":26.40,"aboveFloor":15.41,"earnedPerBenchHour":50.33,"perBenchHour":15.19,"takeHomePerHourAtThisPrice":35.66,"basis":{"profile":"workshop@1","design":"BD-030@1","channel":"gallery@1"},"assumed":[{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/design/making/goodShare","value":1},{"pointer":"#/channel/salesTax","value":0},{"pointer":"#/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/channel/fees"}]}
        """),
        new("unknown-listing", "No design is behind the listing: list it as not described yet.", """{"sku":"XX-999","channel":"web","price":58.00}""", """
        {"type":"/problems/unknown-reference","title":"It names something that does not exist","status":422,"detail":"There is no design \"XX-999\"; case counts.","errors":[{"pointer":"#/sku","code":"unknown-design","detail":"There is no design \"XX-999\"; case counts."}],"requestId":"0192f3a4b5c67d8e9fa0b1c2d3e4f506"}
        """) { Problem = ProblemTypes.UnknownReference },
    ];

    /// <summary>One channel and its listed price.</summary>
    public static readonly IReadOnlyList<MainCase> PriceParts =
    [
        new("listed-price", "The price listed on one channel.", null, Examples.PriceParts) { At = new Dictionary<string, string> { ["channel"] = "web" } },
    ];

    /// <summary>At a price, and beside a plan.</summary>
    public static readonly IReadOnlyList<MainCase> BreakEven =
    [
        new("at-a-price", "How many must sell at this price.", null, Examples.BreakEven) { At = new Dictionary<string, string> { ["price"] = "120.00" } },
        new("beside-a-plan", "And how far a plan of 700 pieces is above that.", null, """
        {"currency":"USD","price":120.00,"contribution":116.87,"units":514,"revenue":61680.00,"benchHours":1028,"capacity":1000,"withinCapacity":true,"shareOfYear":0.514,"marginOfSafety":0.265714,"operatingLeverage":3.751158,"basis":{"profile":"main@1","design":"RB-014@1","channel":"web@1"},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/design/making/goodShare","value":1},{"pointer":"#/channel/salesTax","value":0},{"pointer":"#/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/channel/fees"}]}
        """) { At = new Dictionary<string, string> { ["price"] = "120.00", ["planned"] = "700" } },
    ];

    /// <summary>One line and several.</summary>
    public static readonly IReadOnlyList<MainCase> BreakEvenOfMix =
    [
        new("with-a-surplus", "One design, with money left over.", Examples.Mix, Examples.MixBreakEven),
        new("two-designs", "Three pendants for each pair of earrings.", """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","price":120.00,"ratio":3},{"sku":"ST-010","channel":"web","price":45.00,"ratio":1}]}""", """
        {"currency":"USD","benchMustEarn":60000.00,"contributionPerMixUnit":394.28,"mixUnits":152.176118,"lines":[{"sku":"RB-014","channel":"web","price":120.00,"ratio":3,"contribution":116.87,"units":457,"revenue":54840.00,"benchHours":914},{"sku":"ST-010","channel":"web","price":45.00,"ratio":1,"contribution":43.67,"units":153,"revenue":6885.00,"benchHours":127.5}],"revenue":61725.00,"benchHours":1041.5,"withinCapacity":true,"shareOfYear":0.52075,"basis":{"profile":"main@1","lines":[{"profile":"main@1","design":"RB-014@1","channel":"web@1"},{"profile":"main@1","design":"ST-010@1","channel":"web@1"}]},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/lines/0/design/making/goodShare","value":1},{"pointer":"#/lines/0/channel/salesTax","value":0},{"pointer":"#/lines/0/channel/returns","value":0},{"pointer":"#/lines/1/channel/salesTax","value":0},{"pointer":"#/lines/1/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/lines/0/channel/fees"},{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/lines/1/channel/fees"}]}
        """),
    ];

    /// <summary>A price that does not hold.</summary>
    public static readonly IReadOnlyList<MainCase> Remedies =
    [
        new("below-floor", "A price below its floor.", null, Examples.Remedies) { At = new Dictionary<string, string> { ["price"] = "58.00" } },
    ];

    /// <summary>Both ways round.</summary>
    public static readonly IReadOnlyList<MainCase> DesignBudget =
    [
        new("materials-given", "How many minutes are left for the bench.", Examples.DesignBudget, Examples.DesignBudgetAnswer),
        new("minutes-given", "How much is left for materials.", """{"profile":"main","channel":"web","price":58.00,"minutes":90}""", """
        {"currency":"USD","price":58.00,"channel":"web","netProceeds":56.36,"minutes":90,"materials":11.35,"perBenchHour":30.00,"soldShare":1,"channels":[{"channel":"fair","netProceeds":47.70,"minutes":90,"materials":2.70},{"channel":"gallery","netProceeds":31.90,"minutes":90,"materials":null,"reason":"time-takes-it-all"},{"channel":"shops","netProceeds":58.00,"minutes":90,"materials":13.00},{"channel":"web","netProceeds":56.36,"minutes":90,"materials":11.35}],"basis":{"profile":"main@1","channel":"web@1","channels":["fair@1","gallery@1","shops@1","web@1"]},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/channel/salesTax","value":0},{"pointer":"#/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/channel/fees"}]}
        """),
    ];

    /// <summary>A year that closes and one that does not.</summary>
    public static readonly IReadOnlyList<MainCase> YearPlan =
    [
        new("closes", "Enough is sold.", Examples.YearPlan, Examples.YearPlanAnswer),
        new("falls-short", "Two designs, and still too little.", """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","price":120.00,"units":300},{"sku":"ST-010","channel":"web","price":45.00,"units":200}]}""", """
        {"currency":"USD","closes":false,"surplusBeforeTax":0.00,"surplusAfterTax":0.00,"shortfall":16205.00,"benchMustEarn":60000.00,"contribution":43795.00,"revenue":45000.00,"proceeds":43795.00,"benchHours":766.6667,"withinLimits":true,"limits":[{"name":"hours","kind":"bench-hours","used":766.6667,"available":2000,"within":true}],"lines":[{"sku":"RB-014","channel":"web","price":120.00,"units":300,"verdict":"meets-target","proceeds":35061.00,"materials":0.00,"benchHours":600,"contribution":35061.00,"contributionPerBenchHour":58.44,"rank":1},{"sku":"ST-010","channel":"web","price":45.00,"units":200,"verdict":"below-target","proceeds":8734.00,"materials":0.00,"benchHours":166.6667,"contribution":8734.00,"contributionPerBenchHour":52.40,"rank":2}],"materialSpend":{"planned":0.00,"bought":0.00,"difference":0.00},"basis":{"profile":"main@1","lines":[{"profile":"main@1","design":"RB-014@1","channel":"web@1"},{"profile":"main@1","design":"ST-010@1","channel":"web@1"}]},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/lines/0/design/making/goodShare","value":1},{"pointer":"#/lines/0/channel/salesTax","value":0},{"pointer":"#/lines/0/channel/returns","value":0},{"pointer":"#/lines/1/channel/salesTax","value":0},{"pointer":"#/lines/1/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/lines/0/channel/fees"},{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/lines/1/channel/fees"}]}
        """),
    ];

    /// <summary>Both goals.</summary>
    public static readonly IReadOnlyList<MainCase> BestPlan =
    [
        new("maximum-surplus", "The largest surplus.", Examples.BestPlan, Examples.BestPlanAnswer),
        new("fewest-hours", "The fewest bench hours that still close the year.", """{"profile":"main","goal":"fewest-hours","lines":[{"sku":"RB-014","channel":"web","price":120.00},{"sku":"ST-010","channel":"web","price":45.00,"maximum":300}]}""", """
        {"currency":"USD","closes":true,"surplusBeforeTax":12.12,"surplusAfterTax":12.12,"shortfall":0.00,"benchMustEarn":60000.00,"contribution":60012.12,"revenue":61620.00,"proceeds":60012.12,"benchHours":1027.3333,"withinLimits":true,"limits":[{"name":"hours","kind":"bench-hours","used":1027.3333,"available":2000,"within":true,"binds":false,"worthOfOneMore":0}],"lines":[{"sku":"RB-014","channel":"web","price":120.00,"units":512,"verdict":"meets-target","proceeds":59837.44,"materials":0.00,"benchHours":1024,"contribution":59837.44,"contributionPerBenchHour":58.44,"rank":1},{"sku":"ST-010","channel":"web","price":45.00,"units":4,"verdict":"below-target","proceeds":174.68,"materials":0.00,"benchHours":3.3333,"contribution":174.68,"contributionPerBenchHour":52.40,"rank":2}],"materialSpend":{"planned":0.00,"bought":0.00,"difference":0.00},"best":{"goal":"fewest-hours","proven":true},"basis":{"profile":"main@1","lines":[{"profile":"main@1","design":"RB-014@1","channel":"web@1"},{"profile":"main@1","design":"ST-010@1","channel":"web@1"}]},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/lines/0/design/making/goodShare","value":1},{"pointer":"#/lines/0/channel/salesTax","value":0},{"pointer":"#/lines/0/channel/returns","value":0},{"pointer":"#/lines/1/channel/salesTax","value":0},{"pointer":"#/lines/1/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/lines/0/channel/fees"},{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/lines/1/channel/fees"}]}
        """),
    ];

    /// <summary>Two figures give the rest; chains both ways; tax; discounts.</summary>
    public static readonly IReadOnlyList<MainCase> Markups =
    [
        new("back-from-retail", "From the buyer's price back to the maker's.", Examples.Chain, Examples.ChainAnswer),
        new("from-wholesale-to-retail", "From the maker's price to the buyer's, through a distributor and a shop that doubles.", """{"currency":"USD","cost":60.00,"chain":[{"name":"distributor","markup":0.2},{"name":"shop","multiple":2}]}""", """
        {"cost":60.00,"price":144.00,"markup":1.4,"margin":0.583333,"profit":84.00,"chain":[{"name":"distributor","cost":60.00,"price":72.00,"markup":0.2,"margin":0.166667,"profit":12.00},{"name":"shop","cost":72.00,"price":144.00,"markup":1,"margin":0.5,"profit":72.00}]}
        """),
        new("two-of-five", "A cost and a margin give the rest; with the workings, enough to redo it by hand.", """{"currency":"USD","cost":60.00,"margin":0.4}""", """
        {"cost":60.00,"price":100.00,"markup":0.666667,"margin":0.4,"profit":40.00,"workings":[{"symbol":"cost","label":"what is paid for it","formula":"60","value":60},{"symbol":"margin","label":"profit over price","formula":"0.4","value":0.4},{"symbol":"price","label":"what it sells for, before tax","formula":"cost / (1 - margin)","value":100},{"symbol":"profit","label":"price less cost","formula":"price - cost","value":40},{"symbol":"markup","label":"profit over cost","formula":"profit / cost","value":0.666666666667}]}
        """) { At = new Dictionary<string, string> { ["workings"] = "true" } },
        new("with-sales-tax", "A price that holds the tax: markup and margin are before it.", """{"currency":"USD","cost":60.00,"price":144.00,"salesTax":{"rate":0.2,"included":true}}""", """
        {"cost":60.00,"price":120.00,"markup":1,"margin":0.5,"profit":60.00,"priceWithTax":144.00}
        """),
        new("discounts", "A series of trade discounts and the single one that equals it.", """{"currency":"USD","discounts":{"list":140.00,"rates":[0.3,0.1]}}""", """
        {"discounts":{"list":140.00,"net":88.20,"discount":51.80,"factor":0.63,"single":0.37}}
        """),
    ];

    /// <summary>A page of one.</summary>
    public static readonly IReadOnlyList<MainCase> Audit =
    [
        new("newest", "The newest change alone.", null, Examples.Audit) { At = new Dictionary<string, string> { ["limit"] = "1" } },
    ];
}
