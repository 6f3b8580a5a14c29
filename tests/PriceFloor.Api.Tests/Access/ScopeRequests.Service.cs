namespace PriceFloor.Api.Tests.Access;

/// <summary>Requests with sheets of the maker and of shops, to the log, and about the service itself.</summary>
internal static partial class ScopeRequests
{
    private static Dictionary<string, ScopeRequest[]> OfSheetsAndTheService => new()
    {
        ["POST /v1/movements/batch"] =
        [
            new("/v1/movements/batch?source=web-shop", """[{"ref":"1","on":"2027-01-02","sku":"RB-014","channel":"web","pieces":1,"price":58}]"""),
            new("/v1/movements/batch?source=web-shop", "ref,on,sku,channel,pieces,price\n2,2027-01-02,ONYX-3,web,1,58\n", "text/csv"),
            new("/v1/movements/batch?source=web-shop", """
                [{"ref":"3","on":"2027-01-01","what":"made","sku":"RB-014","pieces":2},
                {"ref":"4","on":"2027-01-01","what":"made","sku":"ONYX-3","pieces":2}]
                """),
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
        ["POST /v1/statements"] =
        [
            new("/v1/statements?currency=USD", Lessons, "text/csv"), new("/v1/statements?currency=USD&lines=true", Lessons, "text/csv"),
            new("/v1/statements?currency=USD&only=draft", Lessons, "text/csv"),
            new("/v1/statements?currency=USD&rules=main", Lessons, "text/csv"), new("/v1/statements?against=main", Lessons, "text/csv"),
            new("/v1/statements?against=onyx", Lessons, "text/csv"),
            new("/v1/statements?against=MAIN&rules=MAIN", Lessons, "text/csv") { IsRefused = true },
        ],
        ["POST /v1/evidence"] =
        [
            new("/v1/evidence", SoldTwice, "text/csv"), new("/v1/evidence?against=main", SoldTwice, "text/csv"),
            new("/v1/evidence?against=onyx", SoldTwice, "text/csv"),
        ],
        ["GET /v1/designs/{sku}/evidence"] = ["/v1/designs/RB-014/evidence", "/v1/designs/ONYX-3/evidence"],
        ["GET /v1/designs/{sku}/learning.svg"] = ["/v1/designs/RB-014/learning.svg"],
        ["GET /v1/channels/{key}/evidence"] = ["/v1/channels/web/evidence"],
        ["GET /v1/profiles/{key}/evidence"] = ["/v1/profiles/main/evidence", "/v1/profiles/onyx/evidence"],
        ["GET /v1/designs/{sku}/demand"] = ["/v1/designs/RB-014/demand", "/v1/designs/ONYX-3/demand"],
        ["GET /v1/shelf"] = ["/v1/shelf?profile=main", "/v1/shelf?profile=onyx"],
        ["GET /v1/shelf.svg"] = ["/v1/shelf.svg?profile=main", "/v1/shelf.svg?profile=onyx"],
        ["GET /v1/shelf.html"] = ["/v1/shelf.html?profile=main", "/v1/shelf.html?profile=onyx"],
        ["GET /v1/stock"] = ["/v1/stock", "/v1/stock?profile=onyx", "/v1/stock?sku=ONYX-3"],
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
        ["POST /v1/keys"] = [new("/v1/keys", """{"name":"new-key","scopes":["verdict"]}"""),
            new("/v1/keys", """{"name":"spare-key","scopes":["verdict"]}""") { IsRefused = true }],
        ["GET /v1/keys"] = ["/v1/keys"],
        ["GET /v1/keys/{name}"] = ["/v1/keys/spare-key"],
        ["POST /v1/keys/{name}/rotation"] = ["/v1/keys/spare-key/rotation"],
        ["DELETE /v1/keys/{name}"] = ["/v1/keys/spare-key"],
        ["POST /v1/backups"] = ["/v1/backups"],
        ["GET /v1/audit"] = [new ScopeRequest("/v1/audit?limit=1000").AsTrail()],
        ["GET /v1/studios"] = [new("/v1/studios") { IsRefused = true }],
        ["GET /v1/studios/{key}"] = [new("/v1/studios/main") { IsRefused = true }],
        ["PUT /v1/studios/{key}"] = [new("/v1/studios/main", """{"name":"x"}""") { IsRefused = true }],
        ["DELETE /v1/studios/{key}"] = [new("/v1/studios/main?repeat=main") { IsRefused = true }],
        ["GET /v1/studios/{key}/export"] = [new("/v1/studios/main/export") { IsRefused = true }],
        ["POST /v1/studios/{key}/import"] = [new("/v1/studios/main/import", "{}", "application/x-ndjson") { IsRefused = true }],
        ["POST /v1/studios/{key}/keys"] = [new("/v1/studios/main/keys", """{"name":"a","scopes":["read"]}""") { IsRefused = true }],
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
