namespace PriceFloor.Api.Tests.Access;

/// <summary>Requests to stored documents: read, write, delete, revisions.</summary>
internal static partial class ScopeRequests
{
    private static Dictionary<string, ScopeRequest[]> ToDocuments => new()
    {
        ["GET /v1/profiles"] = ["/v1/profiles", "/v1/profiles?asOf=2027-01-02T09:00:00Z"],
        ["GET /v1/profiles/{key}"] = ["/v1/profiles/main", "/v1/profiles/onyx"],
        ["PUT /v1/profiles/{key}"] = [new("/v1/profiles/spare", Innocent),
            new ScopeRequest("/v1/profiles/main", Innocent).AsInUse(Told.Names | Told.Costs)],
        ["PATCH /v1/profiles/{key}"] = [new("/v1/profiles/spare", """{"name":"Spare"}""", "application/merge-patch+json")],
        ["DELETE /v1/profiles/{key}"] = ["/v1/profiles/spare", new ScopeRequest("/v1/profiles/main").AsInUse()],
        ["GET /v1/profiles/{key}/revisions"] = ["/v1/profiles/main/revisions", "/v1/profiles/onyx/revisions"],
        ["GET /v1/profiles/{key}/revisions/{number}"] = ["/v1/profiles/main/revisions/1", "/v1/profiles/onyx/revisions/1"],
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
        ["POST /v1/designs/batch"] =
        [
            new("/v1/designs/batch", """[{"key":"SPARE","profile":"main","making":{"minutesPerPiece":20}}]"""),
            new("/v1/designs/batch", "sku,name\nSPARE,Plain\n", "text/csv"),
            new("/v1/designs/batch", "sku,minutesPerPiece\nSPARE,-1\n", "text/csv") { IsRefused = true },
        ],
        ["GET /v1/reading-rules"] = ["/v1/reading-rules", "/v1/reading-rules?asOf=2027-01-02T09:00:00Z"],
        ["GET /v1/starter-rules"] = ["/v1/starter-rules"],
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
        ["PATCH /v1/quotes/{key}"] =
        [
            new("/v1/quotes/Q-SPARE", """{"revisionHours":1}""", "application/merge-patch+json"),
            new("/v1/quotes/Q-1", """{"revisionHours":1}""", "application/merge-patch+json") { IsRefused = true },
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
    };
}
