using PriceFloor.Api.Http;

namespace PriceFloor.Api.OpenApi;

/// <summary>The main cases of storing documents, making keys and reading statements; a test asks each and compares.</summary>
public static class DocumentCases
{
    /// <summary>A year with few figures, with each form of tax, and with what designs draw on.</summary>
    public static readonly IReadOnlyList<MainCase> Profiles =
    [
        new("few-figures", "A year told in two lines.", Examples.Profile, Examples.StoredProfile) { At = new Dictionary<string, string> { ["key"] = "main" } },
        new("flat-tax", "A flat share of the profit set aside for tax, savings in the household, a room at home used as the studio.", """{"currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":48,"daysPerWeek":5,"hoursPerDay":8,"benchShare":0.65},"expenses":[{"name":"Bench rent","amount":540,"per":"month","costKind":"rent"}],"household":[{"name":"Home rent","amount":1450,"per":"month","businessShare":0.12},{"name":"Savings and emergencies","amount":250,"per":"month"}],"tax":{"kind":"flat","rate":0.22}}""", """
        {"key":"flat-tax","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":48,"daysPerWeek":5,"hoursPerDay":8,"benchShare":0.65},"helpers":[],"expenses":[{"name":"Bench rent","amount":540.00,"per":"month","costKind":"rent","deductible":true}],"equipment":[],"soldShare":1,"household":[{"name":"Home rent","amount":1450.00,"per":"month","businessShare":0.12},{"name":"Savings and emergencies","amount":250.00,"per":"month","businessShare":0}],"otherIncome":[],"tax":{"kind":"flat","rate":0.22,"levies":[]},"materials":[],"limits":[],"priceRule":{"retailMultiple":2}}
        """) { At = new Dictionary<string, string> { ["key"] = "flat-tax" } },
        new("levies", "Tax by your own tables: a contribution of which half is deducted, then a tax with an allowance and bands; a least pay.", """{"currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},"expenses":[{"amount":24000,"per":"year"}],"household":[{"amount":3000,"per":"month"}],"pay":{"amount":14,"per":"hour"},"tax":{"kind":"levies","levies":[{"name":"contribution","share":0.9,"bands":[{"rate":0.15}],"deductibleShare":0.5},{"name":"income tax","allowance":15000,"bands":[{"upTo":12000,"rate":0.1},{"rate":0.2}]}]}}""", """
        {"key":"levies","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8,"benchShare":1},"helpers":[],"expenses":[{"amount":24000.00,"per":"year","deductible":true}],"equipment":[],"pay":{"amount":14.00,"per":"hour"},"soldShare":1,"household":[{"amount":3000.00,"per":"month","businessShare":0}],"otherIncome":[],"tax":{"kind":"levies","levies":[{"name":"contribution","share":0.9,"allowance":0.00,"otherBase":0.00,"deductibleShare":0.5,"bands":[{"rate":0.15}]},{"name":"income tax","share":1,"allowance":15000.00,"otherBase":0.00,"deductibleShare":0,"bands":[{"upTo":12000.00,"rate":0.1},{"rate":0.2}]}]},"materials":[],"limits":[],"priceRule":{"retailMultiple":2}}
        """) { At = new Dictionary<string, string> { ["key"] = "levies" } },
        new("workshop", "A stock price list, kiln loads, equipment that wears out, paid help, some pieces that never sell.", """{"currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":48,"daysPerWeek":5,"hoursPerDay":8,"benchShare":0.65},"helpers":[{"name":"Saturday help","benchHoursPerYear":120}],"expenses":[{"name":"Rod and frit","amount":3900,"per":"year","costKind":"materials","tracedTo":"piece"}],"equipment":[{"name":"Kiln","cost":3200,"salvage":200,"inService":"2025-04-01","depreciation":{"method":"straight-line","lifeYears":8}}],"soldShare":0.95,"household":[{"amount":1700,"per":"month"}],"materials":[{"material":"clear-rod","unit":"kg","price":38.00}],"limits":[{"name":"kiln","loadsPerYear":240}]}""", """
        {"key":"workshop","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":48,"daysPerWeek":5,"hoursPerDay":8,"benchShare":0.65},"helpers":[{"name":"Saturday help","benchHoursPerYear":120}],"expenses":[{"name":"Rod and frit","amount":3900.00,"per":"year","costKind":"materials","tracedTo":"piece","deductible":true}],"equipment":[{"name":"Kiln","cost":3200.00,"salvage":200.00,"inService":"2025-04-01","depreciation":{"method":"straight-line","lifeYears":8}}],"soldShare":0.95,"household":[{"amount":1700.00,"per":"month","businessShare":0}],"otherIncome":[],"tax":{"kind":"none","levies":[]},"materials":[{"material":"clear-rod","unit":"kg","price":38.00}],"limits":[{"name":"kiln","loadsPerYear":240}],"priceRule":{"retailMultiple":2}}
        """) { At = new Dictionary<string, string> { ["key"] = "workshop" } },
    ];

    /// <summary>The four ways to tell bench time that are met most, with and without materials.</summary>
    public static readonly IReadOnlyList<MainCase> Designs =
    [
        new("pieces-a-day", "So many a day, averaged over all working days.", Examples.Design, Examples.StoredDesign) { At = new Dictionary<string, string> { ["sku"] = "RB-014" } },
        new("minutes", "Plain minutes for each piece started, of which some are lost.", """{"name":"Stud earrings","profile":"main","making":{"minutesPerPiece":45,"goodShare":0.9}}""", """
        {"key":"ST-010","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","name":"Stud earrings","profile":"main","aliases":[],"making":{"minutesPerPiece":45,"goodShare":0.9,"setupMinutes":0},"materials":[]}
        """) { At = new Dictionary<string, string> { ["sku"] = "ST-010" } },
        new("steps-and-batches", "Steps with losses of their own, one of them a kiln load that must not be hurried; rejected pieces are sold as seconds.", """{"name":"Net dish","profile":"workshop","making":{"steps":[{"name":"torch","handsOnMinutes":34,"goodShare":0.95},{"name":"anneal","handsOnMinutes":20,"batchSize":24,"goodShare":0.98,"mayBeHurried":false,"uses":"kiln"}],"setupMinutes":15,"runSize":12},"seconds":{"share":0.4,"price":11}}""", """
        {"key":"ND-020","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","name":"Net dish","profile":"workshop","aliases":[],"making":{"steps":[{"name":"torch","handsOnMinutes":34,"batchSize":1,"goodShare":0.95,"mayBeHurried":true},{"name":"anneal","handsOnMinutes":20,"batchSize":24,"goodShare":0.98,"mayBeHurried":false,"uses":"kiln"}],"goodShare":1,"setupMinutes":15,"runSize":12},"materials":[],"seconds":{"share":0.4,"price":11.00}}
        """) { At = new Dictionary<string, string> { ["sku"] = "ND-020" } },
        new("materials-from-the-profile", "Rod from the profile's price list with its waste, and a box at a price of its own; another name that shops list it under.", """{"name":"Round beads","profile":"workshop","aliases":["BD-030 / clear"],"making":{"minutesPerPiece":25},"materials":[{"material":"clear-rod","quantity":0.062,"wasteShare":0.08},{"name":"gift box","amount":1.55,"at":"finish"}]}""", """
        {"key":"BD-030","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","name":"Round beads","profile":"workshop","aliases":["BD-030 / clear"],"making":{"minutesPerPiece":25,"goodShare":1,"setupMinutes":0},"materials":[{"material":"clear-rod","quantity":0.062,"wasteShare":0.08,"batchSize":1,"at":"start"},{"wasteShare":0,"batchSize":1,"name":"gift box","amount":1.55,"at":"finish"}]}
        """) { At = new Dictionary<string, string> { ["sku"] = "BD-030" } },
    ];

    /// <summary>The ways of selling that are met most.</summary>
    public static readonly IReadOnlyList<MainCase> Channels =
    [
        new("retail", "An own web shop with a card fee.", Examples.Channel, Examples.StoredChannel) { At = new Dictionary<string, string> { ["key"] = "web" } },
        new("wholesale", "Shops that buy outright and sell on.", """{"name":"Shops that buy outright","sells":"wholesale","currency":"USD"}""", """
        {"key":"shops","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","name":"Shops that buy outright","sells":"wholesale","currency":"USD","shopShare":0,"fees":[],"salesTax":{"rate":0,"included":false},"shipping":{"charged":0.00,"cost":0.00,"returnCost":0.00},"piecesPerOrder":1,"costPerPiece":0.00,"returns":{"share":0,"resaleShare":0,"feesRefunded":false},"priceStep":0.01,"priceEnding":0.00}
        """) { At = new Dictionary<string, string> { ["key"] = "shops" } },
        new("consignment", "A gallery that keeps a share of each sale, and a fee that is never less or more than so much.", """{"name":"Gallery","sells":"retail","currency":"USD","shopShare":0.4,"fees":[{"name":"handling","rate":0.05,"minimum":1.00,"maximum":12.00}]}""", """
        {"key":"gallery","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","name":"Gallery","sells":"retail","currency":"USD","shopShare":0.4,"fees":[{"name":"handling","rate":0.05,"fixed":0.00,"of":"price","minimum":1.00,"maximum":12.00}],"salesTax":{"rate":0,"included":false},"shipping":{"charged":0.00,"cost":0.00,"returnCost":0.00},"piecesPerOrder":1,"costPerPiece":0.00,"returns":{"share":0,"resaleShare":0,"feesRefunded":false},"priceStep":0.01,"priceEnding":0.00}
        """) { At = new Dictionary<string, string> { ["key"] = "gallery" } },
        new("fair", "A stall over the pieces that it sells, sales tax in the price, prices in whole fives.", """{"name":"Summer fair","sells":"retail","currency":"USD","salesTax":{"rate":0.08,"included":true},"stall":{"cost":180,"pieces":30},"priceStep":5.00}""", """
        {"key":"fair","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","name":"Summer fair","sells":"retail","currency":"USD","shopShare":0,"fees":[],"salesTax":{"rate":0.08,"included":true},"shipping":{"charged":0.00,"cost":0.00,"returnCost":0.00},"piecesPerOrder":1,"costPerPiece":0.00,"stall":{"cost":180.00,"pieces":30},"returns":{"share":0,"resaleShare":0,"feesRefunded":false},"priceStep":5.00,"priceEnding":0.00}
        """) { At = new Dictionary<string, string> { ["key"] = "fair" } },
    ];

    /// <summary>One answer for every format.</summary>
    public static readonly IReadOnlyList<MainCase> DesignBatches =
    [
        new("array", "A JSON array.", Examples.DesignBatch, Examples.DesignBatchAnswer),
        new("lines", "A JSON object a line.", Examples.DesignBatchLines, """
        {"items":[{"sku":"RB-014","result":"unchanged","revision":1}],"summary":{"created":0,"changed":0,"unchanged":1}}
        """) { Format = Format.Ndjson },
        new("sheet", "A sheet: a column that it lacks is left as it is stored.", Examples.DesignBatchSheet, """
        {"items":[{"sku":"RB-014","result":"unchanged","revision":1}],"summary":{"created":0,"changed":0,"unchanged":1}}
        """) { Format = Format.Csv },
    ];

    /// <summary>One answer for every format.</summary>
    public static readonly IReadOnlyList<MainCase> ListingBatches =
    [
        new("array", "A JSON array.", Examples.ListingBatch, Examples.ListingBatchAnswer),
        new("lines", "A JSON object a line.", Examples.BatchLines, """
        {"items":[{"sku":"RB-014","channel":"web","result":"unchanged","revision":1}],"summary":{"created":0,"changed":0,"unchanged":1}}
        """) { Format = Format.Ndjson },
        new("sheet", "A sheet as a shop exports it.", Examples.BatchSheet, """
        {"items":[{"sku":"RB-014","channel":"web","result":"unchanged","revision":1}],"summary":{"created":0,"changed":0,"unchanged":1}}
        """) { Format = Format.Csv },
    ];

    /// <summary>What a shop needs, and less than that.</summary>
    public static readonly IReadOnlyList<MainCase> Keys =
    [
        new("shop", "Verdict, floor and target price, nothing that reveals costs.", Examples.KeyRequest, Examples.Key),
        new("one-profile", "The verdict alone, for what counts on one profile, until the end of the year.", """{"name":"gallery-plugin","scopes":["verdict"],"expires":"2028-01-01T00:00:00Z","profiles":["main"]}""", """
        {"name":"gallery-plugin","scopes":["verdict"],"createdAt":"2027-01-02T09:00:00.000000Z","expires":"2028-01-01T00:00:00.000000Z","profiles":["main"],"key":"pf_..."}
        """),
    ];

    /// <summary>One file of each format; a form with a field for each file is answered like its files.</summary>
    public static readonly IReadOnlyList<MainCase> Statements =
    [
        new("sheet", "A CSV file with named columns.", Examples.StatementSheet, Examples.StatementAnswer) { Format = Format.Csv, At = new Dictionary<string, string> { ["account"] = "current" } },
        new("sheet", "The same file in a form.", Examples.StatementSheet, Examples.StatementAnswer) { Format = Format.Files, At = new Dictionary<string, string> { ["account"] = "current" } },
        new("ofx", "An OFX file.", Examples.StatementOfx, """
        {"currency":"USD","files":[{"name":"account","format":"ofx-xml","accounts":[{"account":"current","from":"2026-01-01","to":"2026-01-31","saysPeriod":true,"count":{"lines":1,"in":0.00,"out":540.00}}]}],"coverage":[{"account":"current","months":1,"covered":[{"from":"2026-01-01","to":"2026-01-31"}],"gaps":[],"overlaps":[]}],"accounted":{"read":{"lines":1,"in":0.00,"out":540.00},"placed":{"lines":1,"in":0.00,"out":540.00},"unplaced":{"lines":0,"in":0.00,"out":0.00},"paired":{"lines":0,"in":0.00,"out":0.00},"ownAccount":{"lines":0,"in":0.00,"out":0.00},"leftOut":{"lines":0,"in":0.00,"out":0.00},"duplicate":{"lines":0,"in":0.00,"out":0.00},"outsidePeriod":{"lines":0,"in":0.00,"out":0.00},"foreignCurrency":{"lines":0,"in":0.00,"out":0.00}},"refused":{"count":0,"lines":[]},"draft":{"name":"Drafted from statements","currency":"USD","yearStart":"2026-01-01","calendar":{"weeksPerYear":48,"daysPerWeek":5,"hoursPerDay":8,"benchShare":1},"helpers":[],"expenses":[{"name":"Rent","amount":6480.00,"per":"year","costKind":"rent","deductible":true}],"equipment":[],"soldShare":1,"household":[],"otherIncome":[],"tax":{"kind":"none","levies":[]},"materials":[],"limits":[],"priceRule":{"retailMultiple":2}},"lines":[{"to":"business","costKind":"rent","name":"Rent","rules":["#/rules/0"],"count":1,"total":540.00,"refunds":0.00,"first":"2026-01-05","last":"2026-01-05","perYear":6480.00,"reckoned":"by-months"}],"equipment":[],"unplaced":[],"notCovered":["advertising","car-and-travel","commissions-and-fees","contract-labour","depreciation","wages-and-benefits","insurance","interest-and-loans","professional-services","office","repairs","materials","packaging","supplies","taxes-and-licences","utilities","home-workspace","training","bad-debts-and-refunds","bank-charges","software","shows-and-stalls","shipping","other"],"moneyReceived":{"months":[],"received":0.00,"salesTaxPaid":0.00,"perYear":0.00,"requiredRevenue":6480.00,"beyond":-6480.00,"note":"Money as it reached the accounts: payouts often arrive less a marketplace\u0027s fees, and may hold sales tax and postage. The required revenue is that of the draft, which is made of the same accounts: fees kept back before a payout stand in neither figure, postage paid stands in its expenses, and sales tax handed on is taken off. It is not what buyers paid."},"pace":{"from":"2026-01-01","to":"2026-01-31","isWhole":true,"elapsed":0.084932,"shareDue":0.084932,"keptBack":0.00,"requiredRevenue":6480.00,"requiredToDate":550.36,"incomeToDate":0.00,"ahead":-550.36,"stillToBring":6480.00,"weeksLeft":43.9233,"perWeekLeft":147.53},"basis":{"rules":"main@1"},"assumed":[{"pointer":"#/draft/calendar/weeksPerYear","value":48},{"pointer":"#/draft/calendar/daysPerWeek","value":5},{"pointer":"#/draft/calendar/hoursPerDay","value":8},{"pointer":"#/pace/season","value":"even"},{"pointer":"#/draft/calendar/benchShare","value":1},{"pointer":"#/draft/tax","value":"none"}],"warnings":[{"code":"short-coverage","message":"\u0022current\u0022 covers less than 3 months: bills paid by the quarter or the year may be missing or counted too often.","pointer":"#/coverage/0/months"}]}
        """) { Format = Format.Ofx },
        new("camt", "An ISO 20022 camt.053 file.", Examples.StatementCamt, """
        {"currency":"USD","files":[{"name":"account","format":"camt053","accounts":[{"account":"current","from":"2026-01-01","to":"2026-01-31","saysPeriod":false,"count":{"lines":1,"in":0.00,"out":540.00}}]}],"coverage":[{"account":"current","months":1,"covered":[{"from":"2026-01-01","to":"2026-01-31"}],"gaps":[],"overlaps":[]}],"accounted":{"read":{"lines":1,"in":0.00,"out":540.00},"placed":{"lines":1,"in":0.00,"out":540.00},"unplaced":{"lines":0,"in":0.00,"out":0.00},"paired":{"lines":0,"in":0.00,"out":0.00},"ownAccount":{"lines":0,"in":0.00,"out":0.00},"leftOut":{"lines":0,"in":0.00,"out":0.00},"duplicate":{"lines":0,"in":0.00,"out":0.00},"outsidePeriod":{"lines":0,"in":0.00,"out":0.00},"foreignCurrency":{"lines":0,"in":0.00,"out":0.00}},"refused":{"count":0,"lines":[]},"draft":{"name":"Drafted from statements","currency":"USD","yearStart":"2026-01-01","calendar":{"weeksPerYear":48,"daysPerWeek":5,"hoursPerDay":8,"benchShare":1},"helpers":[],"expenses":[{"name":"Rent","amount":6480.00,"per":"year","costKind":"rent","deductible":true}],"equipment":[],"soldShare":1,"household":[],"otherIncome":[],"tax":{"kind":"none","levies":[]},"materials":[],"limits":[],"priceRule":{"retailMultiple":2}},"lines":[{"to":"business","costKind":"rent","name":"Rent","rules":["#/rules/0"],"count":1,"total":540.00,"refunds":0.00,"first":"2026-01-05","last":"2026-01-05","perYear":6480.00,"reckoned":"by-months"}],"equipment":[],"unplaced":[],"notCovered":["advertising","car-and-travel","commissions-and-fees","contract-labour","depreciation","wages-and-benefits","insurance","interest-and-loans","professional-services","office","repairs","materials","packaging","supplies","taxes-and-licences","utilities","home-workspace","training","bad-debts-and-refunds","bank-charges","software","shows-and-stalls","shipping","other"],"moneyReceived":{"months":[],"received":0.00,"salesTaxPaid":0.00,"perYear":0.00,"requiredRevenue":6480.00,"beyond":-6480.00,"note":"Money as it reached the accounts: payouts often arrive less a marketplace\u0027s fees, and may hold sales tax and postage. The required revenue is that of the draft, which is made of the same accounts: fees kept back before a payout stand in neither figure, postage paid stands in its expenses, and sales tax handed on is taken off. It is not what buyers paid."},"pace":{"from":"2026-01-01","to":"2026-01-31","isWhole":true,"elapsed":0.084932,"shareDue":0.084932,"keptBack":0.00,"requiredRevenue":6480.00,"requiredToDate":550.36,"incomeToDate":0.00,"ahead":-550.36,"stillToBring":6480.00,"weeksLeft":43.9233,"perWeekLeft":147.53},"basis":{"rules":"main@1"},"assumed":[{"pointer":"#/draft/calendar/weeksPerYear","value":48},{"pointer":"#/draft/calendar/daysPerWeek","value":5},{"pointer":"#/draft/calendar/hoursPerDay","value":8},{"pointer":"#/pace/season","value":"even"},{"pointer":"#/draft/calendar/benchShare","value":1},{"pointer":"#/draft/tax","value":"none"}],"warnings":[{"code":"short-coverage","message":"\u0022current\u0022 covers less than 3 months: bills paid by the quarter or the year may be missing or counted too often.","pointer":"#/coverage/0/months"}]}
        """) { Format = Format.Xml },
    ];
}
