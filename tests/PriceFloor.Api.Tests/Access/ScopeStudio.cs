namespace PriceFloor.Api.Tests.Access;

/// <summary>The store to which requests are sent with a key of every scope.</summary>
internal static class ScopeStudio
{
    /// <summary>The figures of its listed prices.</summary>
    public static readonly string[] ListedFigures = ["91.37", "443.21", "77.77"];

    /// <summary>
    /// Zircon is what only readers learn, beryl what nobody asks about, jasper the reading rules, onyx another profile; opal is the name of keys.
    /// </summary>
    public static readonly (string Path, string Document)[] Stored =
    [
        ("/v1/profiles/main", """
            {"name":"Zircon year","currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":47,"daysPerWeek":5,"hoursPerDay":7.25,"benchShare":0.6125},
             "expenses":[{"name":"Zircon rent","amount":547.31,"per":"month","costKind":"rent"},{"name":"Zircon glass","amount":3911.37,"per":"year","tracedTo":"piece","costKind":"materials"}],
             "equipment":[{"name":"Zircon kiln","cost":3217.45,"salvage":211.15,"inService":"2025-04-01","depreciation":{"method":"straight-line","lifeYears":8}}],
             "household":[{"name":"Zircon home","amount":1453.77,"per":"month","businessShare":0.1275,"costKind":"home-workspace"}],
             "otherIncome":[{"name":"Zircon classes","amount":283.45,"per":"month","kind":"taxable","daysPerYear":12}],"tax":{"kind":"flat","rate":0.2175},
             "materials":[{"material":"zircon-rod","unit":"kg","price":38.45}],"limits":[{"name":"zircon-oven","loadsPerYear":2410}],
             "pay":{"amount":14.35,"per":"hour"},"helpers":[{"name":"Zircon helper","benchHoursPerYear":121.75}]}
            """),
        ("/v1/profiles/onyx",
            """{"name":"Onyx year","currency":"USD","calendar":{"weeksPerYear":40,"daysPerWeek":5,"hoursPerDay":8},"expenses":[{"name":"Onyx rent","amount":9000,"per":"year"}]}"""),
        ("/v1/designs/RB-014", """
            {"name":"Beryl drop","profile":"main","making":{"steps":[{"name":"zircon-step","handsOnMinutes":34.25,"goodShare":0.9525,"uses":"zircon-oven"}]},
             "materials":[{"material":"zircon-rod","quantity":0.0625}],"aliases":["river-alias"]}
            """),
        ("/v1/designs/BERYL-2", """{"name":"Beryl bowl","profile":"main","making":{"minutesPerPiece":47.75},"aliases":["beryl-alias"]}"""),
        ("/v1/designs/ONYX-3", """{"name":"Onyx cup","profile":"onyx","making":{"minutesPerPiece":31}}"""),
        ("/v1/channels/web",
            """{"name":"Beryl shop","sells":"retail","currency":"USD","fees":[{"name":"zircon card","rate":0.0315,"fixed":0.35,"of":"paid"}],"costPerPiece":1.83}"""),
        ("/v1/channels/beryl-wholesale", """{"name":"Beryl wholesale","sells":"wholesale","currency":"USD"}"""),
        ("/v1/designs/RB-014/prices/web", """{"price":91.37}"""),
        ("/v1/designs/RB-014/prices/beryl-wholesale", """{"price":443.21}"""),
        ("/v1/designs/ONYX-3/prices/web", """{"price":77.77}"""),
        ("/v1/quotes/Q-1", """
            {"profile":"main","channel":"web","to":"zircon client","validUntil":"2027-02-01","price":1234.56,"deposit":{"share":1},
             "lines":[{"name":"Cup","quantity":4,"design":{"name":"Zircon cup","profile":"main","making":{"minutesPerPiece":61.75},"materials":[{"material":"zircon-rod","quantity":1.0625}]}}],
             "extra":[{"name":"Drawing","hours":2.4375,"kind":"zircon-fee"}],"bought":[{"name":"Zircon engraver","amount":181.43}]}
            """),
        ("/v1/quotes/Q-DRAFT",
            """{"profile":"main","channel":"web","to":"zircon client","lines":[{"name":"Zircon vase","quantity":2,"design":"RB-014"}]}"""),
        ("/v1/quotes/Q-9", """{"profile":"onyx","channel":"web","extra":[{"name":"Onyx work","hours":1}]}"""),
        ("/v1/plans/main",
            """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","price":93.55,"units":37,"season":"zircon-season"}],"seasons":{"zircon-season":[0,0,0,0,0,0,0,0,0,1,2,3]},"opening":{"cash":4321.09}}"""),
        ("/v1/plans/onyx", """{"profile":"onyx","lines":[{"sku":"ONYX-3","channel":"web","price":93.55,"units":37}]}"""),
        ("/v1/reading-rules/main",
            """{"name":"Jasper rules","rules":[{"textHas":"jasp payment","to":"business","costKind":"rent","name":"Jasper line"}]}"""),
        ("/v1/statement-layouts/card", """{"name":"Jasper layout","dateColumn":"Jasper day"}"""),
    ];

    /// <summary>What makes the first quote one that is issued, accepted and done.</summary>
    public static readonly (string Method, string Path, string Body)[] Steps =
    [
        ("POST", "/v1/quotes/Q-1/issue", ""),
        ("PUT", "/v1/quotes/Q-1/outcome", """{"result":"accepted","on":"2027-01-02"}"""),
        ("PUT", "/v1/quotes/Q-1/actual", """{"benchHours":9.875}"""),
    ];

    /// <summary>Documents that requests write and delete: restored before each.</summary>
    public static readonly (string Path, string Document)[] Spare =
    [
        ("/v1/profiles/spare",
            """{"name":"Zircon spare","currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":40,"daysPerWeek":5,"hoursPerDay":8},"expenses":[{"name":"Zircon rent","amount":547.31,"per":"month"}]}"""),
        ("/v1/designs/SPARE",
            """{"name":"Beryl spare","profile":"main","making":{"minutesPerPiece":34.25},"materials":[{"material":"zircon-rod","quantity":0.0625}]}"""),
        ("/v1/channels/spare", """{"name":"Beryl spare","sells":"retail","currency":"USD","costPerPiece":1.83}"""),
        ("/v1/designs/SPARE/prices/web", """{"price":91.37}"""),
        ("/v1/quotes/Q-SPARE", """{"profile":"main","channel":"web","to":"zircon client","extra":[{"name":"Zircon work","hours":1.4375}]}"""),
        ("/v1/scenarios/main",
            """{"name":"Zircon dearer","profile":"main","changes":[{"of":"main","at":"/expenses/0/amount","by":1.0625}]}"""),
        ("/v1/scenarios/spare", """{"name":"Beryl spare","profile":"main","changes":[]}"""),
        ("/v1/statement-layouts/spare", """{"name":"Jasper spare","textColumn":"Jasper words"}"""),
        ("/v1/plans/spare", """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","price":93.55,"units":41}]}"""),
        ("/v1/reading-rules/spare", """{"name":"Jasper spare","rules":[{"textHas":"jasper","to":"household"}]}"""),
    ];
}
