namespace PriceFloor.Api.Tests.Access;

/// <summary>The requests, by route. A new route gets its row here.</summary>
internal static class ScopeRequests
{
    private const string Check = """{"sku":"RB-014","channel":"web","price":58}""",
        Innocent = """{"currency":"USD","calendar":{"weeksPerYear":40,"daysPerWeek":5,"hoursPerDay":8}}""";

    private const string Order = "\"channel\":\"web\",\"items\":[{\"sku\":\"RB-014\",\"pieces\":3}]";

    private const string SoldTwice = "date,sku,channel,pieces,price\n2027-01-01,RB-014,web,1,52.00\n2027-01-02,RB-014,web,1,52.00\n";

    private const string Lessons = "Date,Amount,Description\n2027-01-02,-17.00,Jasp payment\n2027-01-03,-19.00,Other payment\n";

    public static readonly Dictionary<string, ScopeRequest[]> ByRoute = new()
    {
        ["POST /v1/movements/batch"] =
        [
            new("/v1/movements/batch?source=web-shop", """[{"ref":"1","on":"2027-01-02","sku":"RB-014","channel":"web","pieces":1,"price":58}]"""),
            new("/v1/movements/batch?source=web-shop", "ref,on,sku,channel,pieces,price\n2,2027-01-02,ONYX-3,web,1,58\n", "text/csv"),
            new("/v1/movements/batch", "ref,on,sku,channel,pieces,price\n2,2027-01-02,ONYX-3,web,1,58\n", "text/csv") { IsRefused = true },
        ],
        ["GET /v1/movements"] = ["/v1/movements", "/v1/movements?sku=ONYX-3"],
        ["DELETE /v1/movements/{source}/{ref}"] = [new("/v1/movements/web-shop/never") { IsRefused = true }],
        ["POST /v1/bench-log/batch"] =
        [
            new("/v1/bench-log/batch?source=bench-book", """[{"ref":"1","on":"2027-01-02","sku":"RB-014","started":2,"good":2,"minutes":60}]"""),
        ],
        ["GET /v1/bench-log"] = ["/v1/bench-log", "/v1/bench-log?sku=ONYX-3"],
        ["DELETE /v1/bench-log/{source}/{ref}"] = [new("/v1/bench-log/bench-book/never") { IsRefused = true }],
        ["GET /v1/profiles"] = ["/v1/profiles", "/v1/profiles?asOf=2027-01-02T09:00:00Z"],
        ["GET /v1/profiles/{key}"] = ["/v1/profiles/main", "/v1/profiles/onyx"],
        ["PUT /v1/profiles/{key}"] = [new("/v1/profiles/spare", Innocent),
            new ScopeRequest("/v1/profiles/main", Innocent).AsInUse(Told.Names | Told.Costs)],
        ["PATCH /v1/profiles/{key}"] = [new("/v1/profiles/spare", """{"name":"Spare"}""", "application/merge-patch+json")],
        ["DELETE /v1/profiles/{key}"] = ["/v1/profiles/spare", new ScopeRequest("/v1/profiles/main").AsInUse()],
        ["GET /v1/profiles/{key}/revisions"] = ["/v1/profiles/main/revisions", "/v1/profiles/onyx/revisions"],
        ["GET /v1/profiles/{key}/revisions/{number}"] = ["/v1/profiles/main/revisions/1", "/v1/profiles/onyx/revisions/1"],
        ["GET /v1/profiles/{key}/requirement"] = ["/v1/profiles/main/requirement?workings=true", "/v1/profiles/onyx/requirement?workings=true"],
        ["GET /v1/profiles/{key}/year"] = ["/v1/profiles/main/year", "/v1/profiles/onyx/year?planned=9000"],
        ["GET /v1/profiles/{key}/year.svg"] = ["/v1/profiles/main/year.svg", "/v1/profiles/onyx/year.svg"],
        ["GET /v1/profiles/{key}/year.html"] = ["/v1/profiles/main/year.html", "/v1/profiles/onyx/year.html"],
        ["GET /v1/designs"] = ["/v1/designs", new("/v1/designs") { Accept = "text/csv" }, new("/v1/designs") { Accept = "application/x-ndjson" }],
        ["GET /v1/designs/{sku}"] = ["/v1/designs/RB-014", "/v1/designs/ONYX-3", new("/v1/designs/rb-014") { IsRefused = true }],
        ["PUT /v1/designs/{sku}"] =
        [
            new("/v1/designs/SPARE", """{"profile":"spare","making":{"minutesPerPiece":20}}"""),
            new ScopeRequest("/v1/designs/SPARE", """{"profile":"main","making":{"minutesPerPiece":20},"aliases":["river-alias"]}""").AsInUse(),
            new("/v1/designs/SPARE", """{"profile":"main","making":{"minutesPerPiece":20},"materials":[{"material":"rod","quantity":1}]}""")
            {
                IsRefused = true,
            },
        ],
        ["PATCH /v1/designs/{sku}"] = [new("/v1/designs/SPARE", """{"name":"Spare"}""", "application/merge-patch+json")],
        ["DELETE /v1/designs/{sku}"] = ["/v1/designs/SPARE"],
        ["GET /v1/designs/{sku}/revisions"] = ["/v1/designs/RB-014/revisions", "/v1/designs/ONYX-3/revisions"],
        ["GET /v1/designs/{sku}/revisions/{number}"] = ["/v1/designs/RB-014/revisions/1", "/v1/designs/ONYX-3/revisions/1"],
        ["GET /v1/designs/{sku}/floor-price"] = ["/v1/designs/RB-014/floor-price?workings=true", "/v1/designs/ONYX-3/floor-price"],
        ["GET /v1/channels"] = ["/v1/channels"],
        ["GET /v1/channels/{key}"] = ["/v1/channels/web", new("/v1/channels/WEB") { IsRefused = true }],
        ["PUT /v1/channels/{key}"] = [new("/v1/channels/spare", """{"sells":"retail","currency":"USD"}"""),
            new ScopeRequest("/v1/channels/web", """{"sells":"retail","currency":"EUR"}""").AsInUse(Told.Names | Told.OtherProfile)],
        ["PATCH /v1/channels/{key}"] = [new("/v1/channels/spare", """{"name":"Spare"}""", "application/merge-patch+json")],
        ["DELETE /v1/channels/{key}"] = ["/v1/channels/spare", new ScopeRequest("/v1/channels/web").AsInUse(Told.Names | Told.OtherProfile)],
        ["GET /v1/channels/{key}/revisions"] = ["/v1/channels/web/revisions"],
        ["GET /v1/channels/{key}/revisions/{number}"] = ["/v1/channels/web/revisions/1"],
        ["GET /v1/designs/{sku}/prices"] = ["/v1/designs/RB-014/prices", "/v1/designs/ONYX-3/prices"],
        ["GET /v1/designs/{sku}/prices/{channel}"] = ["/v1/designs/RB-014/prices/web", "/v1/designs/ONYX-3/prices/web"],
        ["PUT /v1/designs/{sku}/prices/{channel}"] =
        [
            new("/v1/designs/SPARE/prices/web", """{"price":88}"""), new("/v1/designs/rb-014/prices/web", """{"price":88}""") { IsRefused = true },
            new("/v1/designs/RB-014/prices/WEB", """{"price":88}""") { IsRefused = true },
            new("/v1/designs/RB-014/prices/web", """{"price":88,"currency":"EUR"}""") { IsRefused = true },
        ],
        ["PATCH /v1/designs/{sku}/prices/{channel}"] = [new("/v1/designs/SPARE/prices/web", """{"price":87}""", "application/merge-patch+json")],
        ["DELETE /v1/designs/{sku}/prices/{channel}"] = ["/v1/designs/SPARE/prices/web"],
        ["GET /v1/designs/{sku}/prices/{channel}/revisions"] = ["/v1/designs/RB-014/prices/web/revisions", "/v1/designs/ONYX-3/prices/web/revisions"],
        ["GET /v1/designs/{sku}/prices/{channel}/revisions/{number}"] = ["/v1/designs/RB-014/prices/web/revisions/1",
            "/v1/designs/ONYX-3/prices/web/revisions/1"],
        ["GET /v1/designs/{sku}/break-even"] = ["/v1/designs/RB-014/break-even?channel=web&workings=true",
            "/v1/designs/ONYX-3/break-even?channel=web"],
        ["GET /v1/designs/{sku}/break-even.svg"] = ["/v1/designs/RB-014/break-even.svg?channel=web&price=200"],
        ["GET /v1/designs/{sku}/price-parts"] = ["/v1/designs/RB-014/price-parts?channel=web&workings=true", "/v1/designs/RB-014/price-parts",
            "/v1/designs/ONYX-3/price-parts"],
        ["GET /v1/designs/{sku}/price-parts.svg"] = ["/v1/designs/RB-014/price-parts.svg"],
        ["GET /v1/designs/{sku}/floor-history"] = ["/v1/designs/RB-014/floor-history?channel=web", "/v1/designs/ONYX-3/floor-history?channel=web"],
        ["GET /v1/designs/{sku}/floor-history.svg"] = ["/v1/designs/RB-014/floor-history.svg?channel=web"],
        ["GET /v1/remedies"] = ["/v1/remedies?channel=web", "/v1/remedies?toward=target&sort=short-by"],
        ["GET /v1/designs/{sku}/remedies"] = ["/v1/designs/RB-014/remedies?channel=web&workings=true", "/v1/designs/ONYX-3/remedies?channel=web"],
        ["POST /v1/break-even"] = [new("/v1/break-even", """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","price":200,"ratio":1}]}""")],
        ["POST /v1/design-budgets"] = [new("/v1/design-budgets", """{"profile":"main","channel":"web","price":300,"minutes":30}""")],
        ["POST /v1/quick-floor"] = [new("/v1/quick-floor",
            """{"currency":"USD","expensesPerYear":24000,"livingPerMonth":3000,"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8,"piecesPerDay":4,"taxRate":0.2}""")],
        ["POST /v1/year-plans"] = [new("/v1/year-plans", """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","units":10}]}""")],
        ["POST /v1/year-plans/best"] = [new("/v1/year-plans/best", """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","price":200}]}""")],
        ["GET /v1/plans"] = ["/v1/plans", "/v1/plans?asOf=2027-01-02T09:00:00Z"],
        ["GET /v1/plans/{key}"] = ["/v1/plans/main", "/v1/plans/onyx"],
        ["PUT /v1/plans/{key}"] =
        [
            new("/v1/plans/spare", """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","units":5}]}"""),
            new("/v1/plans/spare", """{"profile":"main","lines":[{"sku":"rb-014","channel":"WEB","units":5}]}""") { IsRefused = true },
        ],
        ["PATCH /v1/plans/{key}"] = [new("/v1/plans/spare", """{"reserve":5}""", "application/merge-patch+json")],
        ["DELETE /v1/plans/{key}"] = ["/v1/plans/spare"],
        ["GET /v1/plans/{key}/revisions"] = ["/v1/plans/main/revisions", "/v1/plans/onyx/revisions"],
        ["GET /v1/plans/{key}/revisions/{number}"] = ["/v1/plans/main/revisions/1", "/v1/plans/onyx/revisions/1"],
        ["GET /v1/plans/{key}/months"] = ["/v1/plans/main/months?lines=true", "/v1/plans/onyx/months"],
        ["GET /v1/plans/{key}/months.svg"] = ["/v1/plans/main/months.svg"],
        ["GET /v1/plans/{key}/months.html"] = ["/v1/plans/main/months.html"],
        ["POST /v1/plans/{key}/progress"] =
            [new("/v1/plans/main/progress", """{"through":"2027-10-31","sold":[{"sku":"RB-014","channel":"web","units":7}]}""")],
        ["POST /v1/plan-months"] = [new("/v1/plan-months", """{"plan":"main"}"""),
            new("/v1/plan-months", """{"plan":{"lines":[{"sku":"RB-014","channel":"web","units":5}]},"profile":"main"}""")],
        ["POST /v1/markups"] = [new("/v1/markups", """{"cost":10,"price":20}""")],
        ["POST /v1/floor-prices"] = [new("/v1/floor-prices", """{"design":"RB-014","profile":"main"}""")],
        ["POST /v1/designs/batch"] =
        [
            new("/v1/designs/batch", """[{"key":"SPARE","profile":"main","making":{"minutesPerPiece":20}}]"""),
            new("/v1/designs/batch", "sku,name\nSPARE,Plain\n", "text/csv"),
            new("/v1/designs/batch", "sku,minutesPerPiece\nSPARE,-1\n", "text/csv") { IsRefused = true },
        ],
        ["GET /v1/reading-rules"] = ["/v1/reading-rules", "/v1/reading-rules?asOf=2027-01-02T09:00:00Z"],
        ["GET /v1/reading-rules/{key}"] = ["/v1/reading-rules/main"],
        ["PUT /v1/reading-rules/{key}"] = [new("/v1/reading-rules/spare", """{"rules":[]}""")],
        ["PATCH /v1/reading-rules/{key}"] = [new("/v1/reading-rules/spare", """{"rules":[]}""", "application/merge-patch+json")],
        ["DELETE /v1/reading-rules/{key}"] = ["/v1/reading-rules/spare"],
        ["GET /v1/reading-rules/{key}/revisions"] = ["/v1/reading-rules/main/revisions"],
        ["GET /v1/reading-rules/{key}/revisions/{number}"] = ["/v1/reading-rules/main/revisions/1"],
        ["GET /v1/quotes"] = ["/v1/quotes", "/v1/quotes?state=issued", "/v1/quotes?state=draft&asOf=2027-01-02T09:00:00Z"],
        ["GET /v1/quotes/{key}"] = ["/v1/quotes/Q-1", "/v1/quotes/Q-9", new("/v1/quotes/q-1") { IsRefused = true }],
        ["PUT /v1/quotes/{key}"] =
        [
            new("/v1/quotes/Q-SPARE", """{"profile":"main","channel":"web","extra":[{"hours":2}]}"""),
            new("/v1/quotes/Q-1", """{"profile":"main","channel":"web","extra":[{"hours":2}]}""") { IsRefused = true },
            new("/v1/quotes/Q-SPARE", """{"profile":"MAIN","channel":"WEB","lines":[{"quantity":1,"design":"rb-014"}]}""") { IsRefused = true },
        ],
        ["DELETE /v1/quotes/{key}"] = ["/v1/quotes/Q-SPARE", new("/v1/quotes/Q-1") { IsRefused = true }],
        ["GET /v1/quotes/{key}/revisions"] = ["/v1/quotes/Q-1/revisions", "/v1/quotes/Q-9/revisions"],
        ["GET /v1/quotes/{key}/revisions/{number}"] = ["/v1/quotes/Q-1/revisions/2", "/v1/quotes/Q-9/revisions/1"],
        ["POST /v1/quotes/{key}/issue"] = ["/v1/quotes/Q-1/issue", new("/v1/quotes/Q-DRAFT/issue") { IsRefused = true }],
        ["POST /v1/quotes/{key}/revise"] =
        [
            new("/v1/quotes/Q-1/revise", """{"as":"Q-SPARE"}""") { IsRefused = true },
            new("/v1/quotes/Q-DRAFT/revise", """{"as":"Q-3"}""") { IsRefused = true },
        ],
        ["GET /v1/quotes/{key}/figures"] = ["/v1/quotes/Q-1/figures", "/v1/quotes/Q-DRAFT/figures?workings=true", "/v1/quotes/Q-9/figures"],
        ["POST /v1/quote-figures"] = [new("/v1/quote-figures",
            """{"profile":"main","channel":"web","lines":[{"quantity":3,"design":"RB-014"}],"price":300,"promised":"2027-02-01"}""")],
        ["GET /v1/quotes/{key}/page"] = ["/v1/quotes/Q-1/page", "/v1/quotes/Q-DRAFT/page"],
        ["GET /v1/quotes/{key}/outcome"] = ["/v1/quotes/Q-1/outcome"],
        ["PUT /v1/quotes/{key}/outcome"] = [new("/v1/quotes/Q-1/outcome", """{"result":"accepted","on":"2027-01-02"}"""),
            new("/v1/quotes/Q-DRAFT/outcome", """{"result":"accepted"}""") { IsRefused = true }],
        ["DELETE /v1/quotes/{key}/outcome"] = [new("/v1/quotes/Q-DRAFT/outcome") { IsRefused = true }],
        ["GET /v1/quotes/{key}/outcome/revisions"] = ["/v1/quotes/Q-1/outcome/revisions"],
        ["GET /v1/quotes/{key}/outcome/revisions/{number}"] = ["/v1/quotes/Q-1/outcome/revisions/1"],
        ["GET /v1/quotes/{key}/actual"] = ["/v1/quotes/Q-1/actual"],
        ["PUT /v1/quotes/{key}/actual"] = [new("/v1/quotes/Q-1/actual", """{"benchHours":9.875}"""),
            new("/v1/quotes/Q-DRAFT/actual", """{"benchHours":2}""") { IsRefused = true }],
        ["DELETE /v1/quotes/{key}/actual"] = [new("/v1/quotes/Q-DRAFT/actual") { IsRefused = true }],
        ["GET /v1/quotes/{key}/actual/revisions"] = ["/v1/quotes/Q-1/actual/revisions"],
        ["GET /v1/quotes/{key}/actual/revisions/{number}"] = ["/v1/quotes/Q-1/actual/revisions/1"],
        ["GET /v1/quote-load"] = ["/v1/quote-load", "/v1/quote-load?profile=main", new("/v1/quote-load?profile=MAIN") { IsRefused = true }],
        ["POST /v1/what-ifs"] =
        [
            new("/v1/what-ifs",
                """{"profile":"main","list":"all","scenarios":["main",{"changes":[{"of":"main","at":"/calendar/weeksPerYear","by":0.9}]}]}"""),
            new("/v1/what-ifs", """
                {"profile":"main","plan":"main","from":"2027-04-01","notice":{"web":8},"phases":[{"on":"2027-05-01","share":1}],"remedies":"plan",
                 "scenarios":[{"changes":[{"of":"plan:main","at":"/lines/*/units","by":0.9}]}]}
                """),
            new("/v1/what-ifs", """{"profile":"main","scenarios":[{"changes":[{"of":"RB-014x","at":"/name","to":"x"}]}]}""") { IsRefused = true },
        ],
        ["POST /v1/what-ifs.svg"] =
        [
            new("/v1/what-ifs.svg",
                """{"profile":"main","list":"all","scenarios":[{"changes":[{"of":"main","at":"/calendar/weeksPerYear","by":0.9}]}]}"""),
        ],
        ["POST /v1/sureness.svg"] =
        [
            new("/v1/sureness.svg", """
                {"profile":"main","plan":"main","line":0,"draws":1024,
                 "ranges":[{"of":"profile:main","at":"/calendar/weeksPerYear","by":{"low":0.9,"high":1}}]}
                """),
        ],
        ["POST /v1/sureness"] =
        [
            new("/v1/sureness", """
                {"profile":"main","sku":"RB-014","channel":"web","price":200,"draws":1024,
                 "ranges":[{"of":"main","at":"/calendar/weeksPerYear","by":{"low":0.9,"high":1}}]}
                """),
        ],
        ["GET /v1/scenarios"] = ["/v1/scenarios"],
        ["GET /v1/scenarios/{key}"] = ["/v1/scenarios/main"],
        ["PUT /v1/scenarios/{key}"] = [new("/v1/scenarios/spare", """{"profile":"main","changes":[]}""")],
        ["PATCH /v1/scenarios/{key}"] = [new("/v1/scenarios/spare", """{"name":"Spare"}""", "application/merge-patch+json")],
        ["DELETE /v1/scenarios/{key}"] = ["/v1/scenarios/spare"],
        ["GET /v1/scenarios/{key}/revisions"] = ["/v1/scenarios/main/revisions"],
        ["GET /v1/scenarios/{key}/revisions/{number}"] = ["/v1/scenarios/main/revisions/1"],
        ["GET /v1/statement-layouts"] = ["/v1/statement-layouts", "/v1/statement-layouts?asOf=2027-01-02T09:00:00Z"],
        ["GET /v1/statement-layouts/{key}"] = ["/v1/statement-layouts/card"],
        ["PUT /v1/statement-layouts/{key}"] = [new("/v1/statement-layouts/spare", """{"dateColumn":"Booked"}""")],
        ["PATCH /v1/statement-layouts/{key}"] = [new("/v1/statement-layouts/spare", """{"name":"Spare"}""", "application/merge-patch+json")],
        ["DELETE /v1/statement-layouts/{key}"] = ["/v1/statement-layouts/spare"],
        ["GET /v1/statement-layouts/{key}/revisions"] = ["/v1/statement-layouts/card/revisions"],
        ["GET /v1/statement-layouts/{key}/revisions/{number}"] = ["/v1/statement-layouts/card/revisions/1"],
        ["POST /v1/statements"] =
        [
            new("/v1/statements?currency=USD", Lessons, "text/csv"), new("/v1/statements?currency=USD&lines=true", Lessons, "text/csv"),
            new("/v1/statements?currency=USD&rules=main", Lessons, "text/csv"), new("/v1/statements?against=main", Lessons, "text/csv"),
            new("/v1/statements?against=onyx", Lessons, "text/csv"),
            new("/v1/statements?against=MAIN&rules=MAIN", Lessons, "text/csv") { IsRefused = true },
        ],
        ["POST /v1/evidence"] =
        [
            new("/v1/evidence", SoldTwice, "text/csv"), new("/v1/evidence?against=main", SoldTwice, "text/csv"),
            new("/v1/evidence?against=onyx", SoldTwice, "text/csv"),
        ],
        ["POST /v1/listed-prices/batch"] =
        [
            new("/v1/listed-prices/batch", """[{"sku":"SPARE","channel":"web","price":88}]"""),
            new("/v1/listed-prices/batch", "sku,channel,price\nSPARE,web,88\n", "text/csv"),
            new("/v1/listed-prices/batch", """[{"sku":"spare","channel":"WEB","price":88}]""") { IsRefused = true },
        ],
        ["GET /v1/price-checks"] =
        [
            "/v1/price-checks?sku=RB-014&channel=web&price=58", "/v1/price-checks?sku=BERYL-2&channel=web&price=58",
            "/v1/price-checks?sku=ONYX-3&channel=web&price=58", "/v1/price-checks?sku=RB-014&channel=web&price=0.01",
            new("/v1/price-checks?sku=rb-014&channel=WEB&price=58") { IsRefused = true },
            new("/v1/price-checks?sku=RB-014&channel=web&price=58&asOf=2020-01-01T00:00:00Z") { IsRefused = true },
        ],
        ["POST /v1/price-checks"] = [new("/v1/price-checks", Check), new("/v1/price-checks", """{"sku":"river-alias","channel":"web","price":58}""")],
        ["POST /v1/order-checks"] =
        [
            new("/v1/order-checks?workings=false", $"{{{Order},\"gifts\":[{{\"sku\":\"RB-014\",\"pieces\":1}}]}}"),
            new("/v1/order-checks", $"[{{{Order}}},{{{Order.Replace("RB-014", "ONYX-3", StringComparison.Ordinal)}}}]"),
            new("/v1/order-checks", $"{{{Order}}}\n{{{Order.Replace("RB-014", "rb-014", StringComparison.Ordinal)}}}\n", "application/x-ndjson"),
            new("/v1/order-checks", "{\"channel\":\"WEB\",\"items\":[{\"sku\":\"rb-014\",\"pieces\":1}]}") { IsRefused = true },
            new("/v1/order-checks?workings=true", $"{{{Order},\"leastOrder\":true}}"),
        ],
        ["GET /v1/designs/{sku}/run-prices"] = ["/v1/designs/RB-014/run-prices?channel=web&workings=true"],
        ["GET /v1/designs/{sku}/run-prices.svg"] = ["/v1/designs/RB-014/run-prices.svg?channel=web"],
        ["POST /v1/price-checks/batch"] =
        [
            new("/v1/price-checks/batch", $"[{Check}]"), new("/v1/price-checks/batch", Check, "application/x-ndjson"),
            new("/v1/price-checks/batch", "sku,channel,price\nRB-014,web,58\nrb-014,WEB,58\n", "text/csv"),
            new("/v1/price-checks/batch", "sku,channel,price\nRB-014,web,58\nrb-014,WEB,58\n", "text/csv") { Accept = "application/json" },
        ],
        ["GET /v1/price-list"] =
        [
            new ScopeRequest("/v1/price-list").AsPriceList(),
            new ScopeRequest("/v1/price-list?channel=web").AsPriceList() with { Accept = "text/csv" },
            new ScopeRequest("/v1/price-list?channel=web").AsPriceList() with { Accept = "text/html" },
            new ScopeRequest("/v1/price-list?profile=main").AsPriceList(), new("/v1/price-list?channel=WEB&profile=MAIN") { IsRefused = true },
        ],
        ["GET /v1/price-list.svg"] = [new ScopeRequest("/v1/price-list.svg?channel=web").AsPriceList()],
        ["GET /v1/price-list.html"] = [new ScopeRequest("/v1/price-list.html").AsPriceList()],
        ["GET /v1/sheets"] = ["/v1/sheets"],
        ["GET /v1/studio.xlsx"] = ["/v1/studio.xlsx"],
        ["POST /v1/studio.xlsx"] = [new("/v1/studio.xlsx", "PK", Workbooks.Book.Type) { IsRefused = true }],
        ["GET /v1/sheets/{sheet}"] =
            ["/v1/sheets/expenses", "/v1/sheets/stock", "/v1/sheets/steps", "/v1/sheets/materials", "/v1/sheets/channels", "/v1/sheets/fees",
                "/v1/sheets/reading-rules"],
        ["PUT /v1/sheets/{sheet}"] =
        [
            new("/v1/sheets/fees", "channel,name,rate\nweb,card,0.03\n", "text/csv"),
            new("/v1/sheets/fees", "channel,name,rate\nWEB,card,0.03\n", "text/csv") { IsRefused = true },
        ],
        ["GET /v1/line-sheet"] =
        [
            new ScopeRequest("/v1/line-sheet?channel=web").AsPriceList(),
            new ScopeRequest("/v1/line-sheet?channel=web").AsPriceList() with { Accept = "text/csv" },
            new("/v1/line-sheet?channel=WEB&profile=MAIN") { IsRefused = true },
        ],
        ["GET /v1/line-sheet.html"] = [new ScopeRequest("/v1/line-sheet.html?channel=web").AsPriceList()],
        ["GET /v1/floor-changes"] = [new ScopeRequest("/v1/floor-changes").AsPriceList()],
        ["POST /v1/keys"] = [new("/v1/keys", """{"name":"new-key","scopes":["verdict"]}"""),
            new("/v1/keys", """{"name":"spare-key","scopes":["verdict"]}""") { IsRefused = true }],
        ["GET /v1/keys"] = ["/v1/keys"],
        ["GET /v1/keys/{name}"] = ["/v1/keys/spare-key"],
        ["POST /v1/keys/{name}/rotation"] = ["/v1/keys/spare-key/rotation"],
        ["DELETE /v1/keys/{name}"] = ["/v1/keys/spare-key"],
        ["POST /v1/backups"] = ["/v1/backups"],
        ["GET /v1/audit"] = [new ScopeRequest("/v1/audit?limit=1000").AsTrail()],
        ["GET /v1/version"] = ["/v1/version"],
        ["GET /"] = ["/"],
        ["GET /.well-known/api-catalog"] = ["/.well-known/api-catalog"],
        ["GET /health/live"] = ["/health/live"],
        ["GET /health/ready"] = ["/health/ready"],
        ["GET /metrics"] = ["/metrics"],
        ["GET /problems"] = ["/problems"],
        ["GET /problems/{slug}"] = ["/problems/busy"],
    };
}
