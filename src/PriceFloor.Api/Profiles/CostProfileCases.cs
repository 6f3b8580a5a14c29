using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Profiles;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class CostProfileCases
{
    /// <summary>A year with few figures, with each form of tax, and with what designs draw on.</summary>
    public static readonly IReadOnlyList<MainCase> Profiles =
    [
        new("few-figures", "A year told in two lines.", Examples.Profile, Examples.StoredProfile)
        {
            At = new Dictionary<string, string> { ["key"] = "main" },
        },
        new("flat-tax", "A flat share of the profit set aside for tax, savings in the household, a room at home used as the studio.",
            """{"currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":48,"daysPerWeek":5,"hoursPerDay":8,"benchShare":0.65},"expenses":[{"name":"Bench rent","amount":540,"per":"month","costKind":"rent"}],"household":[{"name":"Home rent","amount":1450,"per":"month","businessShare":0.12},{"name":"Savings and emergencies","amount":250,"per":"month"}],"tax":{"kind":"flat","rate":0.22}}""",
            """
            {"key":"flat-tax","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":48,"daysPerWeek":5,"hoursPerDay":8,"benchShare":0.65},"helpers":[],"expenses":[{"name":"Bench rent","amount":540.00,"per":"month","costKind":"rent","deductible":true}],"equipment":[],"soldShare":1,"household":[{"name":"Home rent","amount":1450.00,"per":"month","businessShare":0.12},{"name":"Savings and emergencies","amount":250.00,"per":"month","businessShare":0}],"otherIncome":[],"tax":{"kind":"flat","rate":0.22,"levies":[]},"materials":[],"limits":[],"priceRule":{"retailMultiple":2}}
            """) { At = new Dictionary<string, string> { ["key"] = "flat-tax" } },
        new("levies", "Tax by your own tables: a contribution of which half is deducted, then a tax with an allowance and bands; a least pay.",
            """{"currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},"expenses":[{"amount":24000,"per":"year"}],"household":[{"amount":3000,"per":"month"}],"pay":{"amount":14,"per":"hour"},"tax":{"kind":"levies","levies":[{"name":"contribution","share":0.9,"bands":[{"rate":0.15}],"deductibleShare":0.5},{"name":"income tax","allowance":15000,"bands":[{"upTo":12000,"rate":0.1},{"rate":0.2}]}]}}""",
            """
            {"key":"levies","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8,"benchShare":1},"helpers":[],"expenses":[{"amount":24000.00,"per":"year","deductible":true}],"equipment":[],"pay":{"amount":14.00,"per":"hour"},"soldShare":1,"household":[{"amount":3000.00,"per":"month","businessShare":0}],"otherIncome":[],"tax":{"kind":"levies","levies":[{"name":"contribution","share":0.9,"allowance":0.00,"otherBase":0.00,"deductibleShare":0.5,"bands":[{"rate":0.15}]},{"name":"income tax","share":1,"allowance":15000.00,"otherBase":0.00,"deductibleShare":0,"bands":[{"upTo":12000.00,"rate":0.1},{"rate":0.2}]}]},"materials":[],"limits":[],"priceRule":{"retailMultiple":2}}
            """) { At = new Dictionary<string, string> { ["key"] = "levies" } },
        new("workshop", "A stock price list, kiln loads, equipment that wears out, paid help, some pieces that never sell.",
            """{"currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":48,"daysPerWeek":5,"hoursPerDay":8,"benchShare":0.65},"helpers":[{"name":"Saturday help","benchHoursPerYear":120}],"expenses":[{"name":"Rod and frit","amount":3900,"per":"year","costKind":"materials","tracedTo":"piece"}],"equipment":[{"name":"Kiln","cost":3200,"salvage":200,"inService":"2025-04-01","depreciation":{"method":"straight-line","lifeYears":8}}],"soldShare":0.95,"household":[{"amount":1700,"per":"month"}],"materials":[{"material":"clear-rod","unit":"kg","price":38.00}],"limits":[{"name":"kiln","loadsPerYear":240}]}""",
            """
            {"key":"workshop","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":48,"daysPerWeek":5,"hoursPerDay":8,"benchShare":0.65},"helpers":[{"name":"Saturday help","benchHoursPerYear":120}],"expenses":[{"name":"Rod and frit","amount":3900.00,"per":"year","costKind":"materials","tracedTo":"piece","deductible":true}],"equipment":[{"name":"Kiln","cost":3200.00,"salvage":200.00,"inService":"2025-04-01","depreciation":{"method":"straight-line","lifeYears":8}}],"soldShare":0.95,"household":[{"amount":1700.00,"per":"month","businessShare":0}],"otherIncome":[],"tax":{"kind":"none","levies":[]},"materials":[{"material":"clear-rod","unit":"kg","price":38.00}],"limits":[{"name":"kiln","loadsPerYear":240}],"priceRule":{"retailMultiple":2}}
            """) { At = new Dictionary<string, string> { ["key"] = "workshop" } },
    ];
}
