using PriceFloor.Api.AccessKeys;
using PriceFloor.Api.Audit;
using PriceFloor.Api.Backups;
using PriceFloor.Api.BreakEvens;
using PriceFloor.Api.DesignBudgets;
using PriceFloor.Api.Designs;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FirstContact;
using PriceFloor.Api.FirstFloors;
using PriceFloor.Api.FloorChanges;
using PriceFloor.Api.FloorHistories;
using PriceFloor.Api.FloorPrices;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.OpenApi;
using PriceFloor.Api.ListedPrices;
using PriceFloor.Api.Markups;
using PriceFloor.Api.PriceChecks;
using PriceFloor.Api.PriceChecks.Batches;
using PriceFloor.Api.PriceLists;
using PriceFloor.Api.PriceParts;
using PriceFloor.Api.Profiles;
using PriceFloor.Api.Remedies;
using PriceFloor.Api.Statements;
using PriceFloor.Api.YearPlans;
using PriceFloor.Pricing;
using PriceFloor.Statements;

namespace PriceFloor.Api.Running;

/// <summary>Every address of the service.</summary>
public static class Routes
{
    public static void MapRoutes(this WebApplication app)
    {
        var slots = app.Services.GetRequiredService<BatchSlots>();
        var v1 = app.MapGroup("/v1").AddEndpointFilter<InputFilter>();

        v1.MapDocuments<CostProfile>("/profiles", "/{profile}", Scope.Write, Nouns.Profile);
        v1.MapDocuments<Design>("/designs", "/{sku}", Scope.Write, Nouns.Design);
        v1.MapDocuments<Channel>("/channels", "/{channel}", Scope.Write, Nouns.Channel);
        v1.MapDocuments<ListedPrice>("/designs/{sku}/prices", "/{channel}", Scope.Prices, Nouns.ListedPrice);

        v1.MapDocuments<ReadingRules>("/reading-rules", "/{key}", Scope.Write, Nouns.ReadingRules);

        v1.OnPost("/statements", StatementRoutes.Post).AddEndpointFilter(slots).Needs(Scope.Write).Tell(Operations.Statements);
        v1.OnPost("/designs/batch", DesignBatchRoutes.Post).AddEndpointFilter(slots).Needs(Scope.Write).Tell(Operations.DesignBatch);
        v1.OnPost("/listed-prices/batch", ListingBatchRoutes.Post).AddEndpointFilter(slots).Needs(Scope.Prices).Tell(Operations.ListingBatch);

        v1.OnGet("/profiles/{profile}/requirement", Requirement.Get).Needs(Scope.Read).Tell(Operations.Requirement);
        v1.OnGet("/designs/{sku}/floor-price", FloorPriceRoutes.Get).Needs(Scope.Read).Tell(Operations.FloorPrice);
        v1.MapDrawn("/designs/{sku}/floor-history", FloorHistoryRoutes.Get, Scope.Read, Operations.FloorHistory, Format.Json, Format.Svg);
        v1.MapDrawn("/designs/{sku}/price-parts", PricePartsRoutes.Get, Scope.Read, Operations.PriceParts, Format.Json, Format.Svg);
        v1.OnPost("/floor-prices", FloorPriceRoutes.Post).Needs(Scope.Read).Tell(Operations.WhatIf);
        v1.OnGet("/price-checks", PriceCheckRoutes.Get).Needs(Scope.Verdict).Tell(Operations.PriceCheckByQuery);
        v1.OnPost("/price-checks", PriceCheckRoutes.Post).Needs(Scope.Verdict).Tell(Operations.PriceCheck);

        v1.OnPost("/price-checks/batch", BatchRoutes.Post).AddEndpointFilter(slots).Needs(Scope.Verdict).Offer(Format.Json, Format.Ndjson, Format.Csv).Tell(Operations.PriceCheckBatch);
        v1.MapDrawn("/price-list", PriceListRoutes.Get, Scope.Check, Operations.PriceList, Format.Json, Format.Csv, Format.Html, Format.Svg);
        v1.OnGet("/floor-changes", FloorChangeRoutes.Get).Needs(Scope.Read).Tell(Operations.FloorChanges);

        v1.MapDrawn("/designs/{sku}/break-even", BreakEvenRoutes.Get, Scope.Read, Operations.BreakEven, Format.Json, Format.Svg);
        v1.OnPost("/break-even", BreakEvenRoutes.Post).Needs(Scope.Read).Tell(Operations.BreakEvenOfMix);
        v1.OnGet("/designs/{sku}/remedies", RemedyRoutes.Get).Needs(Scope.Read).Tell(Operations.Remedies);
        v1.OnPost("/design-budgets", DesignBudgetRoutes.Post).Needs(Scope.Read).Tell(Operations.DesignBudget);
        v1.OnPost("/first-floor", FirstFloorRoutes.Post).Needs(Scope.Read).Tell(Operations.FirstFloor);
        v1.OnPost("/year-plans", YearPlanRoutes.Post).Needs(Scope.Read).Tell(Operations.YearPlan);
        v1.OnPost("/year-plans/best", YearPlanRoutes.Best).Needs(Scope.Read).Tell(Operations.BestPlan);
        v1.OnPost("/markups", MarkupRoutes.Post).Needs(Scope.Read).Tell(Operations.Markups);

        v1.OnPost("/keys", AccessKeyRoutes.Post).Needs(Scope.Admin).Tell(Operations.MakeKey);
        v1.OnGet("/keys", AccessKeyRoutes.List).Needs(Scope.Admin).Tell(Operations.ListKeys);
        v1.OnPost("/keys/{name}/rotation", AccessKeyRoutes.Rotate).Needs(Scope.Admin).Tell(Operations.RotateKey);
        v1.OnDelete("/keys/{name}", AccessKeyRoutes.Delete).Needs(Scope.Admin).Tell(Operations.DeleteKey);

        v1.OnPost("/backups", BackupRoutes.Post).Needs(Scope.Admin).Tell(Operations.MakeBackup);
        v1.OnGet("/audit", AuditRoutes.Get).Needs(Scope.Admin).Tell(Operations.Audit);

        app.OnGet("/", Welcome.Get).Offer(Format.Json, Format.Html).AddEndpointFilter<InputFilter>().Tell(Operations.Welcome);
        app.OnGet(ApiCatalogRoutes.Path, ApiCatalogRoutes.Get).ExcludeFromDescription();
        app.OnGet("/health/live", Health.Live).AddEndpointFilter<InputFilter>().Tell(Operations.Live);
        app.OnGet("/health/ready", Health.Ready).AddEndpointFilter<InputFilter>().Tell(Operations.Ready);
        if (app.Services.GetRequiredService<Settings>().Metrics)
            app.OnGet("/metrics", MetricsPage.Get).Needs(Scope.Verdict).Offer(MetricsPage.Text).ExcludeFromDescription();
        app.OnGet("/problems", ProblemPages.Index).ExcludeFromDescription();
        app.OnGet("/problems/{slug}", ProblemPages.Page).ExcludeFromDescription();
    }

    /// <summary>An answer that is also drawn: by Accept, or at the same address with the format's suffix.</summary>
    private static void MapDrawn(this RouteGroupBuilder v1, string path, Delegate handler, Scope scope, Operation operation, params IReadOnlyList<Format> formats)
    {
        v1.OnGet(path, handler).Needs(scope).Offer(formats).Tell(operation);
        foreach (var format in formats.Where(format => format.Suffix is not null))
            v1.OnGet(path + format.Suffix, handler).Needs(scope).Always(format).Tell(operation with { Id = operation.Id + format.Suffix }).ExcludeFromDescription();
    }

    private static void MapDocuments<T>(this RouteGroupBuilder v1, string path, string key, Scope writes, Noun noun) where T : class
    {
        if (typeof(T) == typeof(Design))
            v1.OnGet(path, DesignBatchRoutes.List).Needs(Scope.Read).Offer(Format.Json, Format.Ndjson, Format.Csv).Tell(Operations.ListOfDesigns);
        else if (typeof(T) == typeof(ListedPrice))
            v1.OnGet(path, ListedPriceRoutes.List).Needs(Scope.Read).Tell(Operations.List(noun));
        else
            v1.OnGet(path, DocumentRoutes.List<T>).Needs(Scope.Read).Tell(Operations.List(noun));
        v1.OnGet(path + key, DocumentRoutes.Get<T>).Needs(Scope.Read).Tell(Operations.Get(noun));
        v1.OnPut(path + key, DocumentRoutes.Put<T>).Needs(writes).Tell(Operations.Put(noun));
        v1.OnDelete(path + key, DocumentRoutes.Delete<T>).Needs(writes).Tell(Operations.Delete(noun));
        v1.OnGet(path + key + "/revisions", DocumentRoutes.Revisions<T>).Needs(Scope.Read).Tell(Operations.Revisions(noun));
        v1.OnGet(path + key + "/revisions/{number}", DocumentRoutes.Revision<T>).Needs(Scope.Read).Tell(Operations.Revision(noun));
    }
}
