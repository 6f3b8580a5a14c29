using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using Xunit;

namespace PriceFloor.Api.Tests.Access;

public sealed class ScopeTests
{
    private static readonly string[] s_scopes = ["verdict", "check", "prices", "log", "read", "write", "admin"];

    /// <summary>Every route and the scopes that may use it. A route without a row fails the test below.</summary>
    private static readonly Dictionary<string, string> s_open = new()
    {
        ["GET /v1/profiles"] = "read",
        ["GET /v1/profiles/{key}"] = "read",
        ["PUT /v1/profiles/{key}"] = "write",
        ["PATCH /v1/profiles/{key}"] = "write",
        ["DELETE /v1/profiles/{key}"] = "write",
        ["GET /v1/profiles/{key}/revisions"] = "read",
        ["GET /v1/profiles/{key}/revisions/{number}"] = "read",
        ["GET /v1/profiles/{key}/requirement"] = "read",
        ["GET /v1/profiles/{key}/year"] = "read",
        ["GET /v1/profiles/{key}/year.svg"] = "read",
        ["GET /v1/profiles/{key}/year.html"] = "read",
        ["GET /v1/designs"] = "read",
        ["GET /v1/designs/{sku}"] = "read",
        ["PUT /v1/designs/{sku}"] = "write",
        ["PATCH /v1/designs/{sku}"] = "write",
        ["DELETE /v1/designs/{sku}"] = "write",
        ["GET /v1/designs/{sku}/revisions"] = "read",
        ["GET /v1/designs/{sku}/revisions/{number}"] = "read",
        ["GET /v1/designs/{sku}/floor-price"] = "read",
        ["GET /v1/channels"] = "read",
        ["GET /v1/channels/{key}"] = "read",
        ["PUT /v1/channels/{key}"] = "write",
        ["PATCH /v1/channels/{key}"] = "write",
        ["DELETE /v1/channels/{key}"] = "write",
        ["GET /v1/channels/{key}/revisions"] = "read",
        ["GET /v1/channels/{key}/revisions/{number}"] = "read",
        ["GET /v1/designs/{sku}/prices"] = "read",
        ["GET /v1/designs/{sku}/prices/{channel}"] = "read",
        ["PUT /v1/designs/{sku}/prices/{channel}"] = "prices write",
        ["PATCH /v1/designs/{sku}/prices/{channel}"] = "prices write",
        ["DELETE /v1/designs/{sku}/prices/{channel}"] = "prices write",
        ["GET /v1/designs/{sku}/prices/{channel}/revisions"] = "read",
        ["GET /v1/designs/{sku}/prices/{channel}/revisions/{number}"] = "read",
        ["GET /v1/designs/{sku}/break-even"] = "read",
        ["GET /v1/designs/{sku}/break-even.svg"] = "read",
        ["GET /v1/designs/{sku}/price-parts"] = "read",
        ["GET /v1/designs/{sku}/price-parts.svg"] = "read",
        ["GET /v1/designs/{sku}/floor-history"] = "read",
        ["GET /v1/designs/{sku}/floor-history.svg"] = "read",
        ["GET /v1/designs/{sku}/remedies"] = "read",
        ["GET /v1/remedies"] = "read",
        ["POST /v1/break-even"] = "read",
        ["POST /v1/design-budgets"] = "read",
        ["POST /v1/quick-floor"] = "read",
        ["POST /v1/what-ifs"] = "read",
        ["POST /v1/sureness"] = "read",
        ["POST /v1/what-ifs.svg"] = "read",
        ["POST /v1/sureness.svg"] = "read",
        ["GET /v1/scenarios"] = "read",
        ["GET /v1/scenarios/{key}"] = "read",
        ["PUT /v1/scenarios/{key}"] = "write",
        ["PATCH /v1/scenarios/{key}"] = "write",
        ["DELETE /v1/scenarios/{key}"] = "write",
        ["GET /v1/scenarios/{key}/revisions"] = "read",
        ["GET /v1/scenarios/{key}/revisions/{number}"] = "read",
        ["POST /v1/year-plans"] = "read",
        ["POST /v1/year-plans/best"] = "read",
        ["GET /v1/plans"] = "read",
        ["GET /v1/plans/{key}"] = "read",
        ["PUT /v1/plans/{key}"] = "write",
        ["PATCH /v1/plans/{key}"] = "write",
        ["DELETE /v1/plans/{key}"] = "write",
        ["GET /v1/plans/{key}/revisions"] = "read",
        ["GET /v1/plans/{key}/revisions/{number}"] = "read",
        ["GET /v1/plans/{key}/months"] = "read",
        ["GET /v1/plans/{key}/months.svg"] = "read",
        ["GET /v1/plans/{key}/months.html"] = "read",
        ["GET /v1/plans/{key}/progress"] = "read",
        ["POST /v1/plans/{key}/progress"] = "read",
        ["POST /v1/plan-months"] = "read",
        ["POST /v1/markups"] = "read",
        ["POST /v1/floor-prices"] = "read",
        ["POST /v1/designs/batch"] = "write",
        ["GET /v1/reading-rules"] = "read",
        ["GET /v1/starter-rules"] = "read",
        ["GET /v1/reading-rules/{key}"] = "read",
        ["PUT /v1/reading-rules/{key}"] = "write",
        ["PATCH /v1/reading-rules/{key}"] = "write",
        ["DELETE /v1/reading-rules/{key}"] = "write",
        ["GET /v1/reading-rules/{key}/revisions"] = "read",
        ["GET /v1/reading-rules/{key}/revisions/{number}"] = "read",
        ["GET /v1/quotes"] = "read",
        ["GET /v1/quotes/{key}"] = "read",
        ["PUT /v1/quotes/{key}"] = "write",
        ["PATCH /v1/quotes/{key}"] = "write",
        ["DELETE /v1/quotes/{key}"] = "write",
        ["GET /v1/quotes/{key}/revisions"] = "read",
        ["GET /v1/quotes/{key}/revisions/{number}"] = "read",
        ["POST /v1/quotes/{key}/issue"] = "write",
        ["POST /v1/quotes/{key}/revise"] = "write",
        ["GET /v1/quotes/{key}/figures"] = "read",
        ["POST /v1/quote-figures"] = "read",
        ["GET /v1/quotes/{key}/page"] = "check read",
        ["GET /v1/quote-load"] = "read",
        ["GET /v1/quotes/{key}/outcome"] = "read",
        ["PUT /v1/quotes/{key}/outcome"] = "write",
        ["DELETE /v1/quotes/{key}/outcome"] = "write",
        ["GET /v1/quotes/{key}/outcome/revisions"] = "read",
        ["GET /v1/quotes/{key}/outcome/revisions/{number}"] = "read",
        ["GET /v1/quotes/{key}/actual"] = "read",
        ["PUT /v1/quotes/{key}/actual"] = "write",
        ["DELETE /v1/quotes/{key}/actual"] = "write",
        ["GET /v1/quotes/{key}/actual/revisions"] = "read",
        ["GET /v1/quotes/{key}/actual/revisions/{number}"] = "read",
        ["POST /v1/movements/batch"] = "log",
        ["GET /v1/movements"] = "read",
        ["DELETE /v1/movements/{source}/{ref}"] = "log",
        ["POST /v1/bench-log/batch"] = "log",
        ["GET /v1/bench-log"] = "read",
        ["DELETE /v1/bench-log/{source}/{ref}"] = "log",
        ["GET /v1/statement-layouts"] = "read",
        ["GET /v1/statement-layouts/{key}"] = "read",
        ["PUT /v1/statement-layouts/{key}"] = "write",
        ["PATCH /v1/statement-layouts/{key}"] = "write",
        ["DELETE /v1/statement-layouts/{key}"] = "write",
        ["GET /v1/statement-layouts/{key}/revisions"] = "read",
        ["GET /v1/statement-layouts/{key}/revisions/{number}"] = "read",
        ["POST /v1/statements"] = "write",
        ["POST /v1/evidence"] = "read",
        ["GET /v1/designs/{sku}/evidence"] = "read",
        ["GET /v1/designs/{sku}/demand"] = "read",
        ["GET /v1/designs/{sku}/learning.svg"] = "read",
        ["GET /v1/channels/{key}/evidence"] = "read",
        ["GET /v1/profiles/{key}/evidence"] = "read",
        ["GET /v1/shelf"] = "read",
        ["GET /v1/shelf.svg"] = "read",
        ["GET /v1/shelf.html"] = "read",
        ["GET /v1/stock"] = "read",
        ["POST /v1/listed-prices/batch"] = "prices write",
        ["POST /v1/price-checks/batch"] = "verdict check read",
        ["POST /v1/order-checks"] = "verdict check read",
        ["GET /v1/designs/{sku}/run-prices"] = "read",
        ["GET /v1/designs/{sku}/run-prices.svg"] = "read",
        ["GET /v1/price-list"] = "check read",
        ["GET /v1/price-list.svg"] = "check read",
        ["GET /v1/price-list.html"] = "check read",
        ["GET /v1/line-sheet"] = "check read",
        ["GET /v1/sheets"] = "read",
        ["GET /v1/studio.xlsx"] = "read",
        ["POST /v1/studio.xlsx"] = "write",
        ["GET /v1/sheets/{sheet}"] = "read",
        ["PUT /v1/sheets/{sheet}"] = "write",
        ["GET /v1/line-sheet.html"] = "check read",
        ["GET /v1/floor-changes"] = "check read",
        ["GET /v1/price-checks"] = "verdict check read",
        ["POST /v1/price-checks"] = "verdict check read",
        ["POST /v1/keys"] = "admin",
        ["GET /v1/keys/{name}"] = "admin",
        ["GET /v1/keys"] = "admin",
        ["POST /v1/keys/{name}/rotation"] = "admin",
        ["DELETE /v1/keys/{name}"] = "admin",
        ["POST /v1/backups"] = "admin",
        ["GET /v1/audit"] = "admin",
        ["GET /v1/studios"] = "host",
        ["GET /v1/studios/{key}"] = "host",
        ["PUT /v1/studios/{key}"] = "host",
        ["DELETE /v1/studios/{key}"] = "host",
        ["POST /v1/studios/{key}/keys"] = "host",
        ["GET /v1/studios/{key}/export"] = "host",
        ["POST /v1/studios/{key}/import"] = "host",
        ["GET /v1/version"] = "verdict check prices log read write admin",
        ["GET /"] = "anyone",
        ["GET /.well-known/api-catalog"] = "anyone",
        ["GET /health/live"] = "anyone",
        ["GET /health/ready"] = "anyone",
        ["GET /metrics"] = "verdict check read",
        ["GET /problems"] = "anyone",
        ["GET /problems/{slug}"] = "anyone",
    };

    [Fact]
    public async Task Every_route_opens_to_its_scopes_and_to_no_other()
    {
        await using var studio = new Studio(configure: host => host.UseSetting("PRICEFLOOR_METRICS", "on"));
        await studio.HasASmallShop();
        var routes = studio.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .SelectMany(endpoint => endpoint.Metadata.GetMetadata<HttpMethodMetadata>()!
                .HttpMethods.Select(method => $"{method} {endpoint.RoutePattern.RawText}")).ToList();
        Assert.Equal(s_open.Keys.Order(), routes.Order());

        var clients = new Dictionary<string, HttpClient>();
        foreach (var scope in s_scopes)
            clients[scope] = await studio.ClientFor(scope);
        foreach (var (route, scopes) in s_open)
        {
            var (method, path) = (route.Split(' ')[0], Filled(route.Split(' ')[1]));
            Assert.Equal((route, scopes == "anyone"),
                (route, (await studio.Send(method, path, Body(method), studio.ClientWith(null))).Status != 401));
            foreach (var scope in s_scopes)
            {
                var allowed = scopes == "anyone" || scopes.Split(' ').Contains(scope);
                Assert.Equal((route, scope, allowed), (route, scope, (await studio.Send(method, path, Body(method), clients[scope])).Status != 403));
            }
        }
    }

    [Fact]
    public void Scopes_hold_one_another_only_as_documented()
    {
        Caller With(Scope scope) => new("x", new HashSet<Scope> { scope });
        Assert.True(With(Scope.Read).May(Scope.Check) && With(Scope.Read).May(Scope.Verdict) && With(Scope.Check).May(Scope.Verdict)
            && With(Scope.Write).May(Scope.Prices));
        Assert.False(With(Scope.Write).May(Scope.Read) || With(Scope.Admin).May(Scope.Read) || With(Scope.Prices).May(Scope.Write)
            || With(Scope.Check).May(Scope.Read));
    }

    private static string Filled(string path) => path.Replace("{key}", "main", StringComparison.Ordinal)
        .Replace("{sku}", "RB-014", StringComparison.Ordinal)
        .Replace("{channel}", "web", StringComparison.Ordinal).Replace("{number}", "1", StringComparison.Ordinal)
        .Replace("{name}", "nobody", StringComparison.Ordinal).Replace("{slug}", "busy", StringComparison.Ordinal);

    private static string? Body(string method) => method is "PUT" or "POST" ? "{}" : null;
}
