using PriceFloor.Api.Http;

namespace PriceFloor.Api.OpenApi;

/// <summary>Requests that work and what is answered to them; a test sends them and compares.</summary>
public static class Examples
{
    public const string Profile = """
        {"name":"A small studio","currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},
        "expenses":[{"name":"Everything the business pays","amount":24000,"per":"year"}],"household":[{"name":"Everything at home","amount":3000,"per":"month"}]}
        """;

    public const string StoredProfile = """
        {"key":"main","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","name":"A small studio","currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8,"benchShare":1},"helpers":[],"expenses":[{"name":"Everything the business pays","amount":24000.00,"per":"year","deductible":true}],"equipment":[],"soldShare":1,"household":[{"name":"Everything at home","amount":3000.00,"per":"month","businessShare":0}],"otherIncome":[],"tax":{"kind":"none","levies":[]},"materials":[],"limits":[],"priceRule":{"retailMultiple":2}}
        """;

    public const string Design = """{"name":"River drop pendant","profile":"main","making":{"piecesPerDay":4}}""";

    public const string StoredDesign = """
        {"key":"RB-014","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","name":"River drop pendant","profile":"main","aliases":[],"making":{"piecesPerDay":4,"goodShare":1,"setupMinutes":0},"materials":[]}
        """;

    public const string Channel =
        """{"name":"Own web shop","sells":"retail","currency":"USD","fees":[{"name":"card","rate":0.024,"fixed":0.25,"of":"paid"}]}""";

    public const string StoredChannel = """
        {"key":"web","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","name":"Own web shop","sells":"retail","currency":"USD","shopShare":0,"fees":[{"name":"card","rate":0.024,"fixed":0.25,"of":"paid"}],"salesTax":{"rate":0,"included":false},"shipping":{"charged":0.00,"cost":0.00,"returnCost":0.00},"piecesPerOrder":1,"costPerPiece":0.00,"returns":{"share":0,"resaleShare":0,"feesRefunded":false},"priceStep":0.01,"priceEnding":0.00}
        """;

    public const string ListedPrice = """{"price":58.00}""";

    public const string StoredListedPrice =
        """{"sku":"RB-014","channel":"web","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","price":58.00,"currency":"USD"}""";

    public const string Requirement = """
        {"currency":"USD","requiredRevenue":60000.00,"benchMustEarn":60000.00,"expenses":24000.00,"depreciation":0.00,"traced":0.00,"household":36000.00,"otherIncome":0.00,"need":36000.00,"tax":0.00,"profitBeforeTax":36000.00,"workdays":250,"benchHours":2000,"perWeek":1200.00,"perDay":240.00,"perBenchHour":30.00,"takeHomePerHour":18.00,"notCovered":["advertising","car-and-travel","commissions-and-fees","contract-labour","depreciation","wages-and-benefits","insurance","interest-and-loans","professional-services","office","rent","repairs","materials","packaging","supplies","taxes-and-licences","utilities","home-workspace","training","bad-debts-and-refunds","bank-charges","software","shows-and-stalls","shipping","other"],"basis":{"profile":"main@1"},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"}],"warnings":[]}
        """;

    public const string FloorPrice = """
        {"currency":"USD","floor":60.00,"wholesale":60.00,"retail":120.00,"benchHours":2,"benchCost":60.00,"materials":0.00,"secondsCredit":0.00,"startsPerGoodPiece":1,"piecesPerYear":1000,"channels":[{"channel":"web","currency":"USD","floorPrice":61.74,"targetPrice":120.00,"listedPrice":58.00,"verdict":"below-floor"}],"basis":{"profile":"main@1","design":"RB-014@1","channels":["web@1"]},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/design/making/goodShare","value":1},{"pointer":"#/channels/0/salesTax","value":0},{"pointer":"#/channels/0/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/channels/0/fees"}]}
        """;

    public const string FloorHistory = """
        {"sku":"RB-014","name":"River drop pendant","channel":"web","currency":"USD","items":[{"at":"2027-01-02T09:00:00.000000Z","floorPrice":61.74,"targetPrice":120.00,"listedPrice":null,"verdict":null,"movedBy":["web@1"],"basis":["main@1","RB-014@1","web@1"]},{"at":"2027-01-02T09:00:01.000000Z","floorPrice":61.74,"targetPrice":120.00,"listedPrice":58.00,"verdict":"below-floor","movedBy":["RB-014/web@1"],"basis":["main@1","RB-014@1","web@1","RB-014/web@1"]}],"earlier":null}
        """;

    public const string PriceParts = """
        {"currency":"USD","name":"River drop pendant","floor":60.00,"channels":[{"channel":"web","name":"Own web shop","currency":"USD","price":58.00,"priceIs":"listed","verdict":"below-floor","paid":58.00,"parts":[{"part":"sales-tax","amount":0.00,"share":0},{"part":"shop-share","amount":0.00,"share":0},{"part":"fees","amount":1.64,"share":0.02831},{"part":"shipping","amount":0.00,"share":0},{"part":"packing-and-stall","amount":0.00,"share":0},{"part":"returns","amount":0.00,"share":0},{"part":"materials","amount":0.00,"share":0},{"part":"expenses","amount":24.00,"share":0.413793},{"part":"tax","amount":0.00,"share":0},{"part":"household","amount":36.00,"share":0.62069},{"part":"above-floor","amount":-3.64,"share":-0.062793}]}],"basis":{"profile":"main@1","design":"RB-014@1","channel":"web@1"},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/design/making/goodShare","value":1},{"pointer":"#/channel/salesTax","value":0},{"pointer":"#/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/channel/fees"}]}
        """;

    /// <summary>How the printable price list begins.</summary>
    public const string PricePage = "<!DOCTYPE html>\n<html lang=\"en\">\n<head>...<title>Prices, 2027-01-02</title>...</head>...</html>";

    /// <summary>How every picture begins.</summary>
    public static readonly FormatExample Drawing = new(Format.Svg, null,
        """<svg xmlns="http://www.w3.org/2000/svg" id="pf-..." viewBox="0 0 480 ..." role="img" aria-labelledby="pf-...-title pf-...-desc">...</title>...</desc>...</svg>""");

    public const string WhatIf = """
        {"profile":{"currency":"USD","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},"expenses":[{"amount":24000,"per":"year"}],"household":[{"amount":3000,"per":"month"}]},"design":{"making":{"piecesPerDay":4}}}
        """;

    public const string WhatIfAnswer = """
        {"currency":"USD","floor":60.00,"wholesale":60.00,"retail":120.00,"benchHours":2,"benchCost":60.00,"materials":0.00,"secondsCredit":0.00,"startsPerGoodPiece":1,"piecesPerYear":1000,"channels":[],"basis":{"profile":"inline","design":"inline","channels":[]},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/design/making/goodShare","value":1}],"warnings":[]}
        """;

    public const string PriceCheckRequest = """{"sku":"RB-014","channel":"web","price":58.00}""";

    public const string PriceCheck = """
        {"verdict":"below-floor","carriesItsShare":false,"floorPrice":61.74,"targetPrice":120.00,"price":58.00,"currency":"USD","netProceeds":56.36,"aboveFloor":-3.64,"earnedPerBenchHour":28.18,"perBenchHour":30.00,"takeHomePerHourAtThisPrice":16.18,"basis":{"profile":"main@1","design":"RB-014@1","channel":"web@1"},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/design/making/goodShare","value":1},{"pointer":"#/channel/salesTax","value":0},{"pointer":"#/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/channel/fees"}]}
        """;

    public const string BreakEven = """
        {"currency":"USD","price":120.00,"contribution":116.87,"units":514,"revenue":61680.00,"benchHours":1028,"capacity":1000,"withinCapacity":true,"shareOfYear":0.514,"basis":{"profile":"main@1","design":"RB-014@1","channel":"web@1"},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/design/making/goodShare","value":1},{"pointer":"#/channel/salesTax","value":0},{"pointer":"#/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/channel/fees"}]}
        """;

    public const string Mix =
        """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","price":120.00,"ratio":1}],"surplus":{"amount":5000,"tax":"after"}}""";

    public const string MixBreakEven = """
        {"currency":"USD","benchMustEarn":65000.00,"contributionPerMixUnit":116.87,"mixUnits":556.173526,"lines":[{"sku":"RB-014","channel":"web","price":120.00,"ratio":1,"contribution":116.87,"units":557,"revenue":66840.00,"benchHours":1114}],"revenue":66840.00,"benchHours":1114,"withinCapacity":true,"shareOfYear":0.557,"basis":{"profile":"main@1","lines":[{"profile":"main@1","design":"RB-014@1","channel":"web@1"}]},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/lines/0/design/making/goodShare","value":1},{"pointer":"#/lines/0/channel/salesTax","value":0},{"pointer":"#/lines/0/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/lines/0/channel/fees"}]}
        """;

    public const string Remedies = """
        {"currency":"USD","price":58.00,"verdict":"below-floor","aboveFloor":-3.64,"remedies":[{"remedy":"raise-the-price","measure":"price","possible":true,"before":58.00,"after":61.74,"inWords":"a price of 61.74 instead of 58.00"},{"remedy":"work-faster","measure":"bench-minutes-a-piece","possible":true,"before":120.00,"after":112.71,"inWords":"112.71 bench minutes a piece instead of 120"},{"remedy":"spend-less","measure":"money-a-year","possible":true,"before":60000.00,"after":56358.00,"inWords":"a year\u0027s costs lower by 3642.00","cut":3642.00},{"remedy":"cheaper-materials","measure":"money-a-piece","possible":false,"before":0.00,"after":null,"inWords":"The design lists no materials to save on.","reason":"no-materials"},{"remedy":"lose-fewer","measure":"good-share","possible":false,"before":1,"after":null,"inWords":"No pieces are lost as it is.","reason":"nothing-is-lost"},{"remedy":"earn-taxable-elsewhere","measure":"money-a-year","possible":true,"before":0.00,"after":3642.00,"inWords":"3642.00 a year of further taxable income that takes no bench days"},{"remedy":"earn-net-elsewhere","measure":"money-a-year","possible":true,"before":0.00,"after":3642.00,"inWords":"3642.00 a year of further income that is already taxed and takes no bench days"},{"remedy":"new-design-minutes","measure":"bench-minutes-a-piece","possible":true,"before":120.00,"after":112.71,"inWords":"a design for this price may take 112.71 bench minutes with these materials"},{"remedy":"new-design-materials","measure":"money-a-piece","possible":false,"before":0.00,"after":null,"inWords":"At these minutes nothing of the price is left for materials.","reason":"time-takes-it-all"},{"remedy":"more-hours","measure":"hours-a-week","possible":true,"before":40.00,"after":42.59,"inWords":"42.59 working hours a week instead of 40, with the same weeks"}],"balanced":{"benchMinutes":116.35,"materials":null,"cut":1878.00,"carriesItsShare":true},"basis":{"profile":"main@1","design":"RB-014@1","channel":"web@1"},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/design/making/goodShare","value":1},{"pointer":"#/channel/salesTax","value":0},{"pointer":"#/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/channel/fees"}]}
        """;

    public const string DesignBudget = """{"profile":"main","channel":"web","price":58.00,"materials":6.00}""";

    public const string DesignBudgetAnswer = """
        {"currency":"USD","price":58.00,"channel":"web","netProceeds":56.36,"minutes":100.71,"materials":6.00,"perBenchHour":30.00,"soldShare":1,"channels":[{"channel":"web","netProceeds":56.36,"minutes":100.71,"materials":6.00}],"basis":{"profile":"main@1","channel":"web@1","channels":["web@1"]},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/channel/salesTax","value":0},{"pointer":"#/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/channel/fees"}]}
        """;

    public const string QuickFloor =
        """{"currency":"USD","expensesPerYear":24000.00,"livingPerMonth":3000.00,"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8,"piecesPerDay":4,"taxRate":0.2}""";

    public const string QuickFloorAnswer = """
        {"currency":"USD","floor":69.00,"retail":138.00,"takeHomePerHour":18.00,"requiredRevenue":69000.00,"perDay":276.00,"piecesPerYear":1000,"documents":{"profile":{"name":"First figures","currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8,"benchShare":1},"helpers":[],"expenses":[{"name":"All business expenses","amount":24000.00,"per":"year","deductible":true}],"equipment":[],"soldShare":1,"household":[{"name":"Living","amount":3000.00,"per":"month","businessShare":0}],"otherIncome":[],"tax":{"kind":"flat","rate":0.2,"levies":[]},"materials":[],"limits":[],"priceRule":{"retailMultiple":2}},"design":{"name":"The usual piece","profile":"main","aliases":[],"making":{"piecesPerDay":4,"goodShare":1,"setupMinutes":0},"materials":[]}},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/design/making/goodShare","value":1}],"warnings":[]}
        """;

    public const string YearPlan = """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","price":120.00,"units":520}],"hoursKeptBack":100}""";

    public const string YearPlanAnswer = """
        {"currency":"USD","closes":true,"surplusBeforeTax":772.40,"surplusAfterTax":772.40,"shortfall":0.00,"benchMustEarn":60000.00,"contribution":60772.40,"revenue":62400.00,"proceeds":60772.40,"benchHours":1040,"withinLimits":true,"limits":[{"name":"hours","kind":"bench-hours","used":1040,"available":1900,"within":true}],"lines":[{"sku":"RB-014","channel":"web","price":120.00,"units":520,"verdict":"meets-target","proceeds":60772.40,"materials":0.00,"benchHours":1040,"contribution":60772.40,"contributionPerBenchHour":58.44,"rank":1}],"materialSpend":{"planned":0.00,"bought":0.00,"difference":0.00},"basis":{"profile":"main@1","lines":[{"profile":"main@1","design":"RB-014@1","channel":"web@1"}]},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/lines/0/design/making/goodShare","value":1},{"pointer":"#/lines/0/channel/salesTax","value":0},{"pointer":"#/lines/0/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/lines/0/channel/fees"}]}
        """;

    public const string Batch = """[{"sku":"RB-014","channel":"web","price":120.00},{"sku":"RB-015","channel":"web","price":58.00}]""";

    public const string BatchAnswer = """
        {"items":[{"sku":"RB-014","channel":"web","verdict":"meets-target","carriesItsShare":true,"floorPrice":61.74,"targetPrice":120.00,"price":120.00,"currency":"USD","netProceeds":116.87,"aboveFloor":56.87,"earnedPerBenchHour":58.44,"perBenchHour":30.00,"takeHomePerHourAtThisPrice":46.44,"basis":{"profile":"main@1","design":"RB-014@1","channel":"web@1"},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/design/making/goodShare","value":1},{"pointer":"#/channel/salesTax","value":0},{"pointer":"#/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/channel/fees"}]},{"type":"/problems/unknown-reference","title":"It names something that does not exist","status":422,"detail":"There is no design \u0022RB-015\u0022; case counts.","errors":[{"pointer":"#/1/sku","code":"unknown-design","detail":"There is no design \u0022RB-015\u0022; case counts.","line":1,"column":50}],"requestId":"01a2140958d37d99aab5a6bf171bc018","sku":"RB-015","channel":"web"}],"summary":{"meetsTarget":1,"belowTarget":0,"belowFloor":0,"unanswered":1}}
        """;

    public const string BatchLines = PriceCheckRequest + "\n";

    public static readonly string BatchLinesAnswer = """{"sku":"RB-014","channel":"web",""" + PriceCheck.Trim()[1..] + "\n"
        + """{"summary":{"meetsTarget":0,"belowTarget":0,"belowFloor":1,"unanswered":0}}""" + "\n";

    public const string BatchSheet = "sku,channel,price\r\nRB-014,web,58.00\r\n";

    public const string BatchSheetAnswer =
        "sku,channel,price,verdict,floorPrice,targetPrice,problem\r\nRB-014,web,58.00,below-floor,61.74,120.00,\r\n";

    public const string PriceList = """
        {"items":[{"sku":"RB-014","name":"River drop pendant","channel":"web","currency":"USD","floorPrice":61.74,"targetPrice":120.00,"listedPrice":58.00,"verdict":"below-floor","basis":"RB-014@1"}],"next":null,"basis":{"profiles":["main@1"],"channels":["web@1"]},"warnings":[]}
        """;

    public const string PriceListSheet = "sku,name,channel,currency,floorPrice,targetPrice,listedPrice,verdict,reason\r\n"
        + "RB-014,River drop pendant,web,USD,61.74,120.00,58.00,below-floor,\r\n";

    public const string DesignBatch =
        """[{"key":"RB-014","name":"River drop pendant","profile":"main","making":{"piecesPerDay":4}},{"key":"ST-001","profile":"main","making":{"minutesPerPiece":55}}]""";

    public const string DesignBatchLines = """{"key":"RB-014","name":"River drop pendant","profile":"main","making":{"piecesPerDay":4}}""" + "\n";

    public const string DesignBatchSheet = "sku,name,profile,piecesPerDay\r\nRB-014,River drop pendant,main,4\r\n";

    public const string DesignBatchAnswer =
        """{"items":[{"sku":"RB-014","result":"unchanged","revision":1},{"sku":"ST-001","result":"created","revision":1}],"summary":{"created":1,"changed":0,"unchanged":1}}""";

    public static readonly string DesignLines = StoredDesign.Trim() + "\n";

    public const string DesignSheet = "sku,name,profile,piecesPerDay,piecesPerBenchDay,minutesPerPiece,steps,goodShare,setupMinutes,runSize,"
        + "materials,secondsShare,secondsPrice,soldShare,aliases\r\nRB-014,River drop pendant,main,4,,,,1,0,,,,,,\r\n";

    public const string ListingBatch = """[{"sku":"RB-014","channel":"web","price":58.00}]""";

    public const string ListingBatchAnswer =
        """{"items":[{"sku":"RB-014","channel":"web","result":"unchanged","revision":1}],"summary":{"created":0,"changed":0,"unchanged":1}}""";

    public const string FloorChanges = """
        {"items":[{"sku":"RB-014","channel":"web","currency":"USD","oldFloorPrice":null,"newFloorPrice":61.74,"oldTargetPrice":null,"newTargetPrice":120.00,"listedPrice":58.00,"verdict":"below-floor","carriesItsShare":false,"movedBy":["RB-014@1: created","web@1: created","main@1: created"]}],"next":"p4.51c09e2f7a30"}
        """;

    public const string BestPlan =
        """{"profile":"main","goal":"maximum-surplus","hoursKeptBack":100,"lines":[{"sku":"RB-014","channel":"web","price":120.00,"minimum":50,"maximum":700},{"sku":"RB-014","channel":"web","price":100.00}]}""";

    public const string BestPlanAnswer = """
        {"currency":"USD","closes":true,"surplusBeforeTax":46146.50,"surplusAfterTax":46146.50,"shortfall":0.00,"benchMustEarn":60000.00,"contribution":106146.50,"revenue":109000.00,"proceeds":106146.50,"benchHours":1900,"withinLimits":true,"limits":[{"name":"hours","kind":"bench-hours","used":1900,"available":1900,"within":true,"binds":true,"worthOfOneMore":0.00}],"lines":[{"sku":"RB-014","channel":"web","price":120.00,"units":700,"verdict":"meets-target","proceeds":81809.00,"materials":0.00,"benchHours":1400,"contribution":81809.00,"contributionPerBenchHour":58.44,"rank":1,"heldBy":"maximum"},{"sku":"RB-014","channel":"web","price":100.00,"units":250,"verdict":"below-target","proceeds":24337.50,"materials":0.00,"benchHours":500,"contribution":24337.50,"contributionPerBenchHour":48.68,"rank":2}],"materialSpend":{"planned":0.00,"bought":0.00,"difference":0.00},"best":{"goal":"maximum-surplus","proven":true},"basis":{"profile":"main@1","lines":[{"profile":"main@1","design":"RB-014@1","channel":"web@1"},{"profile":"main@1","design":"RB-014@1","channel":"web@1"}]},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/lines/0/design/making/goodShare","value":1},{"pointer":"#/lines/0/channel/salesTax","value":0},{"pointer":"#/lines/0/channel/returns","value":0},{"pointer":"#/lines/1/design/making/goodShare","value":1},{"pointer":"#/lines/1/channel/salesTax","value":0},{"pointer":"#/lines/1/channel/returns","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/lines/0/channel/fees"},{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/lines/1/channel/fees"}]}
        """;

    public const string Chain = """{"currency":"USD","price":120.00,"chain":[{"name":"shop","margin":0.5}]}""";

    public const string ChainAnswer =
        """{"cost":60.00,"price":120.00,"markup":1,"margin":0.5,"profit":60.00,"chain":[{"name":"shop","cost":60.00,"price":120.00,"markup":1,"margin":0.5,"profit":60.00}]}""";

    public const string KeyRequest = """{"name":"shop-plugin","scopes":["check"]}""";

    public const string Key = """{"name":"shop-plugin","scopes":["check"],"createdAt":"2027-01-02T09:00:00.000000Z","key":"pf_..."}""";

    public const string Backup =
        """{"name":"pricefloor-20270102T090000Z.db","bytes":61440,"sha256":"0f343b0931126a20f133d67c2b018a3b5e9d6ad87ff1bd7a6e23c8a01e5f7c44","schema":1}""";

    public const string RotatedKey =
        """{"name":"shop-plugin","scopes":["check"],"createdAt":"2027-01-02T09:00:00.000000Z","previousUntil":"2027-01-03T09:00:00.000000Z","key":"pf_..."}""";

    public const string Audit =
        """{"items":[{"at":"2027-01-02T09:00:00.000001Z","by":"first-admin-key","action":"rotated","kind":"key","key":"shop-plugin"}],"next":"9223372036854775807.3"}""";

    public const string ListedKey = """{"name":"shop-plugin","scopes":["check"],"createdAt":"2027-01-02T09:00:00.000000Z"}""";

    public const string KeyPage =
        """{"items":[{"name":"gallery-plugin","scopes":["verdict"],"createdAt":"2027-01-02T09:00:00.000000Z","expires":"2028-01-01T00:00:00.000000Z","profiles":["main"]},{"name":"shop-plugin","scopes":["check"],"createdAt":"2027-01-02T09:00:00.000000Z"}],"next":null}""";

    public const string ReadingRules = """
        {"name":"My two accounts","rules":[{"textHas":"bench rent","paid":"out","costKind":"rent","to":"business"},{"textMatches":"(rod|frit) order","costKind":"materials","to":"business","tracedTo":"piece"},{"textHas":"home rent","paid":"out","to":"household","businessShare":0.12,"name":"Home rent"},{"textHas":"shop payout","to":"sale"}]}
        """;

    public const string StoredReadingRules = """
        {"key":"main","revision":1,"savedAt":"2027-01-02T09:00:00Z","name":"My two accounts","rules":[{"textHas":"bench rent","paid":"out","costKind":"rent","to":"business"},{"textMatches":"(rod|frit) order","costKind":"materials","to":"business","tracedTo":"piece"},{"textHas":"home rent","paid":"out","to":"household","businessShare":0.12,"name":"Home rent"},{"textHas":"shop payout","to":"sale"}]}
        """;

    public const string StatementSheet = "Date,Amount,Description,Currency\r\n2026-01-05,-540.00,Bench rent January,USD\r\n"
        + "2026-01-09,-120.50,Frit order 4471,USD\r\n2026-01-15,812.40,Shop payout,USD\r\n2026-01-30,-88.00,Riverside choir trip,USD\r\n";

    public const string StatementOfx = "<?xml version=\"1.0\"?><?OFX OFXHEADER=\"200\" VERSION=\"220\"?><OFX><BANKMSGSRSV1><STMTTRNRS><STMTRS>"
        + "<CURDEF>USD</CURDEF><BANKACCTFROM><ACCTID>current</ACCTID></BANKACCTFROM><BANKTRANLIST><DTSTART>20260101</DTSTART><DTEND>20260131</DTEND>"
        + "<STMTTRN><TRNTYPE>DEBIT</TRNTYPE><DTPOSTED>20260105</DTPOSTED><TRNAMT>-540.00</TRNAMT><FITID>1</FITID><MEMO>Bench rent January</MEMO>"
        + "</STMTTRN></BANKTRANLIST></STMTRS></STMTTRNRS></BANKMSGSRSV1></OFX>";

    public const string StatementCamt = "<?xml version=\"1.0\"?><Document xmlns=\"urn:iso:std:iso:20022:tech:xsd:camt.053.001.08\"><BkToCstmrStmt>"
        + "<Stmt><Id>1</Id><Acct><Id><Othr><Id>current</Id></Othr></Id></Acct><Ntry><Amt Ccy=\"USD\">540.00</Amt><CdtDbtInd>DBIT</CdtDbtInd><Sts>"
        + "<Cd>BOOK</Cd></Sts><BookgDt><Dt>2026-01-05</Dt></BookgDt><AcctSvcrRef>1</AcctSvcrRef><AddtlNtryInf>Bench rent January</AddtlNtryInf>"
        + "</Ntry></Stmt></BkToCstmrStmt></Document>";

    public const string StatementAnswer = """
        {"currency":"USD","files":[{"name":"current","format":"csv","accounts":[{"account":"current","from":"2026-01-01","to":"2026-01-31","saysPeriod":false,"count":{"lines":4,"in":812.40,"out":748.50}}]}],"coverage":[{"account":"current","months":1,"covered":[{"from":"2026-01-01","to":"2026-01-31"}],"gaps":[],"overlaps":[]}],"accounted":{"read":{"lines":4,"in":812.40,"out":748.50},"placed":{"lines":3,"in":812.40,"out":660.50},"unplaced":{"lines":1,"in":0.00,"out":88.00},"paired":{"lines":0,"in":0.00,"out":0.00},"ownAccount":{"lines":0,"in":0.00,"out":0.00},"leftOut":{"lines":0,"in":0.00,"out":0.00},"duplicate":{"lines":0,"in":0.00,"out":0.00},"outsidePeriod":{"lines":0,"in":0.00,"out":0.00},"foreignCurrency":{"lines":0,"in":0.00,"out":0.00}},"refused":{"count":0,"lines":[]},"draft":{"name":"Drafted from statements","currency":"USD","yearStart":"2026-01-01","calendar":{"weeksPerYear":48,"daysPerWeek":5,"hoursPerDay":8,"benchShare":1},"helpers":[],"expenses":[{"name":"Rent","amount":6480.00,"per":"year","costKind":"rent","deductible":true},{"name":"Materials","amount":1446.00,"per":"year","costKind":"materials","tracedTo":"piece","deductible":true}],"equipment":[],"soldShare":1,"household":[],"otherIncome":[],"tax":{"kind":"none","levies":[]},"materials":[],"limits":[],"priceRule":{"retailMultiple":2}},"lines":[{"to":"business","costKind":"rent","name":"Rent","rules":["#/rules/0"],"count":1,"total":540.00,"refunds":0.00,"first":"2026-01-05","last":"2026-01-05","perYear":6480.00,"reckoned":"by-months"},{"to":"business","costKind":"materials","name":"Materials","rules":["#/rules/1"],"count":1,"total":120.50,"refunds":0.00,"first":"2026-01-09","last":"2026-01-09","perYear":1446.00,"reckoned":"by-months"},{"to":"sale","costKind":null,"name":"Sale","rules":["#/rules/3"],"count":1,"total":812.40,"refunds":0.00,"first":"2026-01-15","last":"2026-01-15","perYear":9748.80,"reckoned":"by-months"}],"equipment":[],"unplaced":[{"text":"Riverside choir trip","paid":"out","count":1,"total":88.00,"first":"2026-01-30","last":"2026-01-30","suggested":null}],"notCovered":["advertising","car-and-travel","commissions-and-fees","contract-labour","depreciation","wages-and-benefits","insurance","interest-and-loans","professional-services","office","repairs","packaging","supplies","taxes-and-licences","utilities","home-workspace","training","bad-debts-and-refunds","bank-charges","software","shows-and-stalls","shipping","other"],"moneyReceived":{"months":[{"month":"2026-01","received":812.40,"salesTaxPaid":0.00}],"received":812.40,"salesTaxPaid":0.00,"perYear":9748.80,"requiredRevenue":7926.00,"beyond":1822.80,"note":"Money as it reached the accounts: payouts often arrive less a marketplace\u0027s fees, and may hold sales tax and postage. The required revenue is that of the draft, which is made of the same accounts: fees kept back before a payout stand in neither figure, postage paid stands in its expenses, and sales tax handed on is taken off. It is not what buyers paid."},"pace":{"from":"2026-01-01","to":"2026-01-31","isWhole":true,"elapsed":0.084932,"shareDue":0.084932,"keptBack":0.00,"requiredRevenue":7926.00,"requiredToDate":673.17,"incomeToDate":812.40,"ahead":139.23,"stillToBring":7113.60,"weeksLeft":43.9233,"perWeekLeft":161.96},"basis":{"rules":"main@1"},"assumed":[{"pointer":"#/draft/calendar/weeksPerYear","value":48},{"pointer":"#/draft/calendar/daysPerWeek","value":5},{"pointer":"#/draft/calendar/hoursPerDay","value":8},{"pointer":"#/pace/season","value":"even"},{"pointer":"#/draft/calendar/benchShare","value":1},{"pointer":"#/draft/tax","value":"none"}],"warnings":[{"code":"short-coverage","message":"\u0022current\u0022 covers less than 3 months: bills paid by the quarter or the year may be missing or counted too often.","pointer":"#/coverage/0/months"},{"code":"unplaced-lines","message":"Lines that no rule took are in no figure of the draft; add rules for the largest of them.","pointer":"#/unplaced"}]}
        """;

    public static readonly string Version = $$$"""
        {"version":"{{{FirstContact.Welcome.Version}}}","commit":"9db5fedfc14e44a0b08c94d83102366425631856","runtime":".NET 10.0.0","schema":{{{PriceFloor.Storage.Migrations.Newest}}},"contract":"1"}
        """;

    public const string WelcomePage = "<!doctype html><html lang=\"en\">...</html>";

    /// <summary>The service's own words, with the version that runs.</summary>
    public static readonly string Welcome = $$$"""
        {"name":"PriceFloor","version":"{{{FirstContact.Welcome.Version}}}","summary":"The lowest price that keeps a studio and its maker going for the year.","key":"Calls under /v1 need the header \"Authorization: Bearer pf_...\"; the first key is in the file first-admin-key in the data folder.","links":{"docs":"/docs","openapi":"/openapi/v1.json","problems":"/problems","health":"/health/ready","priceChecks":"/v1/price-checks","apiCatalog":"/.well-known/api-catalog"}}
        """;
}
