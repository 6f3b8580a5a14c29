using PriceFloor.Api.Access;
using PriceFloor.Api.AccessKeys;
using PriceFloor.Api.Audit;
using PriceFloor.Api.Backups;
using PriceFloor.Api.BreakEvens;
using PriceFloor.Api.Channels;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Demands;
using PriceFloor.Api.DesignBudgets;
using PriceFloor.Api.Designs;
using PriceFloor.Api.Documents;
using PriceFloor.Api.DocumentSheets;
using PriceFloor.Api.Evidence;
using PriceFloor.Api.Evidence.Logged;
using PriceFloor.Api.FirstContact;
using PriceFloor.Api.FloorChanges;
using PriceFloor.Api.FloorHistories;
using PriceFloor.Api.FloorPrices;
using PriceFloor.Api.HealthChecks;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.LineSheets;
using PriceFloor.Api.ListedPrices;
using PriceFloor.Api.LogLines;
using PriceFloor.Api.ManyStudios;
using PriceFloor.Api.Markups;
using PriceFloor.Api.Metrics;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.OrderChecks;
using PriceFloor.Api.Plans;
using PriceFloor.Api.PriceChecks;
using PriceFloor.Api.PriceChecks.Batches;
using PriceFloor.Api.PriceLists;
using PriceFloor.Api.PriceParts;
using PriceFloor.Api.Profiles;
using PriceFloor.Api.QuickFloors;
using PriceFloor.Api.Quotes;
using PriceFloor.Api.ReadingRuleSets;
using PriceFloor.Api.Remedies;
using PriceFloor.Api.RunPrices;
using PriceFloor.Api.Scenarios;
using PriceFloor.Api.ShelfLists;
using PriceFloor.Api.StatementLayouts;
using PriceFloor.Api.Statements;
using PriceFloor.Api.StockLists;
using PriceFloor.Api.Sureness;
using PriceFloor.Api.WhatIfs;
using PriceFloor.Api.Workbooks;
using PriceFloor.Api.YearPlans;
using PriceFloor.Api.Years;

namespace PriceFloor.Api.Running;

/// <summary>Every address of the service.</summary>
public static class Routes
{
    public static void MapRoutes(this WebApplication app)
    {
        var (input, slots) = (new InputFilter(), app.Services.GetRequiredService<BatchSlots>());
        var v1 = app.MapGroup("/v1").AddEndpointFilter(input);

        MapDocuments(v1, slots);
        MapComputations(v1, slots);
        v1.MapAccessKeys();
        v1.MapBackups();
        v1.MapAudit();
        v1.MapStudios();
        v1.MapFirstContact();

        app.MapGet("/", Welcome.Get).Offer(Format.Json, Format.Html).AddEndpointFilter(input).Tell(FirstContactOperations.Welcome);
        app.MapGet(ApiCatalogRoutes.Path, ApiCatalogRoutes.Get).ExcludeFromDescription();
        app.MapGet("/health/live", Health.Live).AddEndpointFilter(input).Tell(HealthOperations.Live);
        app.MapGet("/health/ready", Health.Ready).AddEndpointFilter(input).Tell(HealthOperations.Ready);
        if (app.Services.GetRequiredService<Settings>() is { Metrics: true } settings)
            app.MapGet("/metrics", MetricsPage.Get).Needs(settings.HasManyStudios ? Scope.Host : Scope.Verdict).Offer(MetricsPage.Text)
                .ExcludeFromDescription();
        app.MapGet("/problems", ProblemPages.Index).ExcludeFromDescription();
        app.MapGet("/problems/{slug}", ProblemPages.Page).ExcludeFromDescription();
    }

    private static void MapDocuments(RouteGroupBuilder v1, BatchSlots slots)
    {
        v1.MapProfiles();
        v1.MapDesigns(slots);
        v1.MapChannels();
        v1.MapListedPrices(slots);
        v1.MapReadingRules();
        v1.MapStatementLayouts();
        v1.MapDocumentSheets(slots);
        v1.MapWorkbooks(slots);
        v1.MapQuotes();
        v1.MapLog(slots);
    }

    private static void MapComputations(RouteGroupBuilder v1, BatchSlots slots)
    {
        v1.MapStatements(slots);
        v1.MapEvidence(slots);
        v1.MapLoggedEvidence();
        v1.MapDemands();
        v1.MapShelf();
        v1.MapStock();
        v1.MapFloorPrices();
        v1.MapFloorHistories();
        v1.MapPriceParts();
        v1.MapPriceChecks();
        v1.MapPriceCheckBatches(slots);
        v1.MapOrderChecks();
        v1.MapPriceLists();
        v1.MapLineSheets();
        v1.MapFloorChanges();
        v1.MapBreakEvens();
        v1.MapRunPrices();
        v1.MapRemedies();
        v1.MapDesignBudgets();
        v1.MapQuickFloors();
        v1.MapYearPlans();
        v1.MapWhatIfs();
        v1.MapScenarios();
        v1.MapSureness();
        v1.MapPlans();
        v1.MapYears();
        v1.MapMarkups();
    }
}
