namespace PriceFloor.Api.Tests.Access;

/// <summary>Requests that ask for figures.</summary>
internal static partial class ScopeRequests
{
    private static Dictionary<string, ScopeRequest[]> Questions => new()
    {
        ["GET /v1/profiles/{key}/requirement"] = ["/v1/profiles/main/requirement?workings=true", "/v1/profiles/onyx/requirement?workings=true"],
        ["GET /v1/profiles/{key}/year"] = ["/v1/profiles/main/year", "/v1/profiles/onyx/year?planned=9000"],
        ["GET /v1/profiles/{key}/year.svg"] = ["/v1/profiles/main/year.svg", "/v1/profiles/onyx/year.svg"],
        ["GET /v1/profiles/{key}/year.html"] = ["/v1/profiles/main/year.html", "/v1/profiles/onyx/year.html"],
        ["GET /v1/designs/{sku}/floor-price"] = ["/v1/designs/RB-014/floor-price?workings=true", "/v1/designs/ONYX-3/floor-price"],
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
        ["GET /v1/plans/{key}/months"] = ["/v1/plans/main/months?lines=true", "/v1/plans/onyx/months"],
        ["GET /v1/plans/{key}/months.svg"] = ["/v1/plans/main/months.svg"],
        ["GET /v1/plans/{key}/months.html"] = ["/v1/plans/main/months.html"],
        ["GET /v1/plans/{key}/progress"] = ["/v1/plans/main/progress?through=2027-10-31", "/v1/plans/onyx/progress?through=2027-10-31&workings=true"],
        ["POST /v1/plans/{key}/progress"] =
            [new("/v1/plans/main/progress", """{"through":"2027-10-31","sold":[{"sku":"RB-014","channel":"web","units":7}]}""")],
        ["POST /v1/plan-months"] = [new("/v1/plan-months", """{"plan":"main"}"""),
            new("/v1/plan-months", """{"plan":{"lines":[{"sku":"RB-014","channel":"web","units":5}]},"profile":"main"}""")],
        ["POST /v1/markups"] = [new("/v1/markups", """{"cost":10,"price":20}""")],
        ["POST /v1/floor-prices"] = [new("/v1/floor-prices", """{"design":"RB-014","profile":"main"}""")],
        ["GET /v1/quotes/{key}/figures"] = ["/v1/quotes/Q-1/figures", "/v1/quotes/Q-DRAFT/figures?workings=true", "/v1/quotes/Q-9/figures"],
        ["POST /v1/quote-figures"] = [new("/v1/quote-figures",
            """{"profile":"main","channel":"web","lines":[{"quantity":3,"design":"RB-014"}],"price":300,"promised":"2027-02-01"}""")],
        ["GET /v1/quotes/{key}/page"] = ["/v1/quotes/Q-1/page", "/v1/quotes/Q-DRAFT/page"],
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
        ["GET /v1/line-sheet"] =
        [
            new ScopeRequest("/v1/line-sheet?channel=web").AsPriceList(),
            new ScopeRequest("/v1/line-sheet?channel=web").AsPriceList() with { Accept = "text/csv" },
            new("/v1/line-sheet?channel=WEB&profile=MAIN") { IsRefused = true },
        ],
        ["GET /v1/line-sheet.html"] = [new ScopeRequest("/v1/line-sheet.html?channel=web").AsPriceList()],
        ["GET /v1/floor-changes"] = [new ScopeRequest("/v1/floor-changes").AsPriceList()],
    };
}
