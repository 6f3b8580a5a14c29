using PriceFloor.Api.Access;
using PriceFloor.Api.AccessKeys;
using PriceFloor.Api.Audit;
using PriceFloor.Api.Backups;
using PriceFloor.Api.BreakEvens;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.DesignBudgets;
using PriceFloor.Api.Designs;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FirstContact;
using PriceFloor.Api.FloorChanges;
using PriceFloor.Api.FloorHistories;
using PriceFloor.Api.FloorPrices;
using PriceFloor.Api.HealthChecks;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.ListedPrices;
using PriceFloor.Api.Markups;
using PriceFloor.Api.Metrics;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.PriceChecks;
using PriceFloor.Api.PriceChecks.Batches;
using PriceFloor.Api.PriceLists;
using PriceFloor.Api.PriceParts;
using PriceFloor.Api.Profiles;
using PriceFloor.Api.QuickFloors;
using PriceFloor.Api.Remedies;
using PriceFloor.Api.Statements;
using PriceFloor.Api.YearPlans;
using PriceFloor.Statements;

namespace PriceFloor.Api.Running;

/// <summary>Every address of the service.</summary>
public static class Routes
{
    public static void MapRoutes(this WebApplication app)
    {
        var (input, slots) = (new InputFilter(), app.Services.GetRequiredService<BatchSlots>());
        var v1 = app.MapGroup("/v1").AddEndpointFilter(input);

        v1.MapGet("/profiles", DocumentRoutes.List<CostProfile>).Needs(Scope.Read).Tell(Operations.List(Nouns.Profile));
        v1.MapGet("/profiles/{key}", DocumentRoutes.Get<CostProfile>).Needs(Scope.Read).Tell(Operations.Get(Nouns.Profile));
        v1.MapPut("/profiles/{key}", DocumentRoutes.Put<CostProfile>).Needs(Scope.Write).Tell(Operations.Put(Nouns.Profile));
        v1.MapDelete("/profiles/{key}", DocumentRoutes.Delete<CostProfile>).Needs(Scope.Write).Tell(Operations.Delete(Nouns.Profile));
        v1.MapGet("/profiles/{key}/revisions", DocumentRoutes.Revisions<CostProfile>).Needs(Scope.Read).Tell(Operations.Revisions(Nouns.Profile));
        v1.MapGet("/profiles/{key}/revisions/{number}", DocumentRoutes.Revision<CostProfile>).Needs(Scope.Read).Tell(Operations.Revision(Nouns.Profile));

        v1.MapGet("/designs", DesignBatchRoutes.List).Needs(Scope.Read).Offer(Format.Json, Format.Ndjson, Format.Csv).Tell(Operations.ListOfDesigns);
        v1.MapGet("/designs/{sku}", DocumentRoutes.Get<Design>).Needs(Scope.Read).Tell(Operations.Get(Nouns.Design));
        v1.MapPut("/designs/{sku}", DocumentRoutes.Put<Design>).Needs(Scope.Write).Tell(Operations.Put(Nouns.Design));
        v1.MapDelete("/designs/{sku}", DocumentRoutes.Delete<Design>).Needs(Scope.Write).Tell(Operations.Delete(Nouns.Design));
        v1.MapGet("/designs/{sku}/revisions", DocumentRoutes.Revisions<Design>).Needs(Scope.Read).Tell(Operations.Revisions(Nouns.Design));
        v1.MapGet("/designs/{sku}/revisions/{number}", DocumentRoutes.Revision<Design>).Needs(Scope.Read).Tell(Operations.Revision(Nouns.Design));

        v1.MapGet("/channels", DocumentRoutes.List<Channel>).Needs(Scope.Read).Tell(Operations.List(Nouns.Channel));
        v1.MapGet("/channels/{key}", DocumentRoutes.Get<Channel>).Needs(Scope.Read).Tell(Operations.Get(Nouns.Channel));
        v1.MapPut("/channels/{key}", DocumentRoutes.Put<Channel>).Needs(Scope.Write).Tell(Operations.Put(Nouns.Channel));
        v1.MapDelete("/channels/{key}", DocumentRoutes.Delete<Channel>).Needs(Scope.Write).Tell(Operations.Delete(Nouns.Channel));
        v1.MapGet("/channels/{key}/revisions", DocumentRoutes.Revisions<Channel>).Needs(Scope.Read).Tell(Operations.Revisions(Nouns.Channel));
        v1.MapGet("/channels/{key}/revisions/{number}", DocumentRoutes.Revision<Channel>).Needs(Scope.Read).Tell(Operations.Revision(Nouns.Channel));

        v1.MapGet("/designs/{sku}/prices", ListedPriceRoutes.List).Needs(Scope.Read).Tell(Operations.List(Nouns.ListedPrice));
        v1.MapGet("/designs/{sku}/prices/{channel}", DocumentRoutes.Get<ListedPrice>).Needs(Scope.Read).Tell(Operations.Get(Nouns.ListedPrice));
        v1.MapPut("/designs/{sku}/prices/{channel}", DocumentRoutes.Put<ListedPrice>).Needs(Scope.Prices).Tell(Operations.Put(Nouns.ListedPrice));
        v1.MapDelete("/designs/{sku}/prices/{channel}", DocumentRoutes.Delete<ListedPrice>).Needs(Scope.Prices).Tell(Operations.Delete(Nouns.ListedPrice));
        v1.MapGet("/designs/{sku}/prices/{channel}/revisions", DocumentRoutes.Revisions<ListedPrice>).Needs(Scope.Read).Tell(Operations.Revisions(Nouns.ListedPrice));
        v1.MapGet("/designs/{sku}/prices/{channel}/revisions/{number}", DocumentRoutes.Revision<ListedPrice>).Needs(Scope.Read).Tell(Operations.Revision(Nouns.ListedPrice));

        v1.MapGet("/reading-rules", DocumentRoutes.List<ReadingRules>).Needs(Scope.Read).Tell(Operations.List(Nouns.ReadingRules));
        v1.MapGet("/reading-rules/{key}", DocumentRoutes.Get<ReadingRules>).Needs(Scope.Read).Tell(Operations.Get(Nouns.ReadingRules));
        v1.MapPut("/reading-rules/{key}", DocumentRoutes.Put<ReadingRules>).Needs(Scope.Write).Tell(Operations.Put(Nouns.ReadingRules));
        v1.MapDelete("/reading-rules/{key}", DocumentRoutes.Delete<ReadingRules>).Needs(Scope.Write).Tell(Operations.Delete(Nouns.ReadingRules));
        v1.MapGet("/reading-rules/{key}/revisions", DocumentRoutes.Revisions<ReadingRules>).Needs(Scope.Read).Tell(Operations.Revisions(Nouns.ReadingRules));
        v1.MapGet("/reading-rules/{key}/revisions/{number}", DocumentRoutes.Revision<ReadingRules>).Needs(Scope.Read).Tell(Operations.Revision(Nouns.ReadingRules));

        v1.MapPost("/statements", StatementRoutes.Post).AddEndpointFilter(slots).Needs(Scope.Write).Tell(Operations.Statements);
        v1.MapPost("/designs/batch", DesignBatchRoutes.Post).AddEndpointFilter(slots).Needs(Scope.Write).Tell(Operations.DesignBatch);
        v1.MapPost("/listed-prices/batch", ListingBatchRoutes.Post).AddEndpointFilter(slots).Needs(Scope.Prices).Tell(Operations.ListingBatch);

        v1.MapGet("/profiles/{key}/requirement", YearRequirement.Get).Needs(Scope.Read).Tell(Operations.Requirement);
        v1.MapGet("/designs/{sku}/floor-price", FloorPriceRoutes.Get).Needs(Scope.Read).Tell(Operations.FloorPrice);
        v1.MapGet("/designs/{sku}/floor-history", FloorHistoryRoutes.Get).Needs(Scope.Read).Offer(Format.Json, Format.Svg).Tell(Operations.FloorHistory);
        v1.MapGet("/designs/{sku}/floor-history.svg", FloorHistoryRoutes.Get).Needs(Scope.Read).Always(Format.Svg).Tell(Operations.FloorHistory.As(Format.Svg));
        v1.MapGet("/designs/{sku}/price-parts", PricePartsRoutes.Get).Needs(Scope.Read).Offer(Format.Json, Format.Svg).Tell(Operations.PriceParts);
        v1.MapGet("/designs/{sku}/price-parts.svg", PricePartsRoutes.Get).Needs(Scope.Read).Always(Format.Svg).Tell(Operations.PriceParts.As(Format.Svg));
        v1.MapPost("/floor-prices", FloorPriceRoutes.Post).Needs(Scope.Read).Tell(Operations.WhatIf);
        v1.MapGet("/price-checks", PriceCheckRoutes.Get).Needs(Scope.Verdict).Tell(Operations.PriceCheckByQuery);
        v1.MapPost("/price-checks", PriceCheckRoutes.Post).Needs(Scope.Verdict).Tell(Operations.PriceCheck);

        v1.MapPost("/price-checks/batch", BatchRoutes.Post).AddEndpointFilter(slots).Needs(Scope.Verdict).Offer(Format.Json, Format.Ndjson, Format.Csv).Tell(Operations.PriceCheckBatch);
        v1.MapGet("/price-list", PriceListRoutes.Get).Needs(Scope.Check).Offer(Format.Json, Format.Csv, Format.Html, Format.Svg).Tell(Operations.PriceList);
        v1.MapGet("/price-list.html", PriceListRoutes.Get).Needs(Scope.Check).Always(Format.Html).Tell(Operations.PriceList.As(Format.Html));
        v1.MapGet("/price-list.svg", PriceListRoutes.Get).Needs(Scope.Check).Always(Format.Svg).Tell(Operations.PriceList.As(Format.Svg) with { Needed = ["channel"] });
        v1.MapGet("/floor-changes", FloorChangeRoutes.Get).Needs(Scope.Check).Tell(Operations.FloorChanges);

        v1.MapGet("/designs/{sku}/break-even", BreakEvenRoutes.Get).Needs(Scope.Read).Offer(Format.Json, Format.Svg).Tell(Operations.BreakEven);
        v1.MapGet("/designs/{sku}/break-even.svg", BreakEvenRoutes.Get).Needs(Scope.Read).Always(Format.Svg).Tell(Operations.BreakEven.As(Format.Svg));
        v1.MapPost("/break-even", BreakEvenRoutes.Post).Needs(Scope.Read).Tell(Operations.BreakEvenOfMix);
        v1.MapGet("/designs/{sku}/remedies", RemedyRoutes.Get).Needs(Scope.Read).Tell(Operations.Remedies);
        v1.MapPost("/design-budgets", DesignBudgetRoutes.Post).Needs(Scope.Read).Tell(Operations.DesignBudget);
        v1.MapPost("/quick-floor", QuickFloorRoutes.Post).Needs(Scope.Read).Tell(Operations.QuickFloor);
        v1.MapPost("/year-plans", YearPlanRoutes.Post).Needs(Scope.Read).Tell(Operations.YearPlan);
        v1.MapPost("/year-plans/best", YearPlanRoutes.Best).Needs(Scope.Read).Tell(Operations.BestPlan);
        v1.MapPost("/markups", MarkupRoutes.Post).Needs(Scope.Read).Tell(Operations.Markups);

        v1.MapPost("/keys", AccessKeyRoutes.Post).Needs(Scope.Admin).Tell(Operations.MakeKey);
        v1.MapGet("/keys", AccessKeyRoutes.List).Needs(Scope.Admin).Tell(Operations.ListKeys);
        v1.MapGet("/keys/{name}", AccessKeyRoutes.Get).Needs(Scope.Admin).Tell(Operations.GetKey);
        v1.MapPost("/keys/{name}/rotation", AccessKeyRoutes.Rotate).Needs(Scope.Admin).Tell(Operations.RotateKey);
        v1.MapDelete("/keys/{name}", AccessKeyRoutes.Delete).Needs(Scope.Admin).Tell(Operations.DeleteKey);

        v1.MapPost("/backups", BackupRoutes.Post).Needs(Scope.Admin).Tell(Operations.MakeBackup);
        v1.MapGet("/audit", AuditRoutes.Get).Needs(Scope.Admin).Tell(Operations.Audit);

        v1.MapGet("/version", VersionRoutes.Get).NeedsAnyKey().Tell(Operations.Version);

        app.MapGet("/", Welcome.Get).Offer(Format.Json, Format.Html).AddEndpointFilter(input).Tell(Operations.Welcome);
        app.MapGet(ApiCatalogRoutes.Path, ApiCatalogRoutes.Get).ExcludeFromDescription();
        app.MapGet("/health/live", Health.Live).AddEndpointFilter(input).Tell(Operations.Live);
        app.MapGet("/health/ready", Health.Ready).AddEndpointFilter(input).Tell(Operations.Ready);
        if (app.Services.GetRequiredService<Settings>().Metrics)
            app.MapGet("/metrics", MetricsPage.Get).Needs(Scope.Verdict).Offer(MetricsPage.Text).ExcludeFromDescription();
        app.MapGet("/problems", ProblemPages.Index).ExcludeFromDescription();
        app.MapGet("/problems/{slug}", ProblemPages.Page).ExcludeFromDescription();
    }
}
