using FluentValidation;
using PriceFloor.Api.Access;
using PriceFloor.Api.AccessKeys;
using PriceFloor.Api.Backups;
using PriceFloor.Api.BreakEvens;
using PriceFloor.Api.Changes;
using PriceFloor.Api.Channels;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.DesignBudgets;
using PriceFloor.Api.Designs;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;
using PriceFloor.Api.HealthChecks;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.ManyStudios;
using PriceFloor.Api.Markups;
using PriceFloor.Api.OrderChecks;
using PriceFloor.Api.Plans;
using PriceFloor.Api.PriceChecks;
using PriceFloor.Api.Profiles;
using PriceFloor.Api.QuickFloors;
using PriceFloor.Api.Quotes;
using PriceFloor.Api.ReadingRuleSets;
using PriceFloor.Api.Sheets;
using PriceFloor.Api.StatementLayouts;
using PriceFloor.Api.Sureness;
using PriceFloor.Api.Telemetry;
using PriceFloor.Api.WhatIfs;
using PriceFloor.Api.YearPlans;
using PriceFloor.Statements;
using PriceFloor.Storage;
using Serilog;
using Serilog.Settings.Configuration;

namespace PriceFloor.Api.Running;

/// <summary>How the service is built; Program.cs is its table of contents.</summary>
public static class Starting
{
    /// <summary>How long answers that have begun may take after a SIGTERM; a container is killed after ten seconds.</summary>
    private static readonly TimeSpan s_longestGoodbye = TimeSpan.FromSeconds(6);

    /// <summary>Faults that whoever runs the server can fix: reported in one sentence, without a stack trace.</summary>
    public static bool IsOperatorsFault(Exception fault) => fault is SettingsException or StoreException;

    /// <summary>Neither the environment nor the command line counts.</summary>
    public static void IgnoreSettings(this WebApplicationBuilder builder)
    {
        builder.Configuration.Sources.Clear();
        builder.Configuration.AddInMemoryCollection(); // the host keeps its own here
    }

    public static void UseSettings(this WebApplicationBuilder builder, bool demo)
    {
        builder.Services.AddSingleton(services => Settings.Read(services.GetRequiredService<IConfiguration>(), demo));
        builder.Services.AddSingleton(TimeProvider.System);
        builder.Services.AddCors();
        builder.Services.AddOptions<Microsoft.AspNetCore.Cors.Infrastructure.CorsOptions>().Configure<Settings>((cors, settings) =>
            cors.AddDefaultPolicy(policy => policy.WithOrigins([.. settings.CorsOrigins]).AllowAnyHeader().AllowAnyMethod().WithExposedHeaders("ETag",
                "Location", "Link", "X-Request-Id", "RateLimit", "RateLimit-Policy", "Retry-After", "Deprecation", "Sunset")));
    }

    public static void UseRequestLog(this WebApplicationBuilder builder) => builder.Host.UseSerilog((context, log) =>
    {
        RequestLog.Write(log, inContainer: context.Configuration["DOTNET_RUNNING_IN_CONTAINER"] == "true");
        // no search for other sinks: 29 ms of the start and 3 MiB
        log.ReadFrom.Configuration(context.Configuration, new ConfigurationReaderOptions(typeof(ConsoleLoggerConfigurationExtensions).Assembly));
    });

    public static void UseStore(this WebApplicationBuilder builder)
    {
        builder.Services.AddSingleton(services =>
            new StoreLock(services.GetRequiredService<Settings>().DataFolder, services.GetRequiredService<TimeProvider>()));
        builder.Services.AddSingleton(services => StoreMaker.By(services.GetRequiredService<TimeProvider>()));
        builder.Services.AddSingleton<Studios>();
        builder.Services.UseStudioParts();
        builder.Services.Configure<HostOptions>(host => host.ShutdownTimeout = s_longestGoodbye);
        builder.Services.AddSingleton<StoreReadiness>();
        builder.Services.AddSingleton<Outages>();
        builder.Services.AddSingleton<Readiness>();
        builder.Services.AddSingleton(services => new AnswerTime(TimeSpan.FromSeconds(services.GetRequiredService<Settings>().AnswerSeconds)));
        builder.Services.AddSingleton<RateLimits>();
        builder.Services.AddSingleton<BatchSlots>();
        builder.Services.AddSingleton(_ => new BodyMemory());
        builder.Services.AddSingleton(services => new PutBy(services.GetRequiredService<Settings>().PutByBytes));
        builder.Services.AddSingleton<ServiceCounts>();
        builder.Services.AddSingleton<RequestRecord>();
        builder.Services.AddSingleton(services =>
        {
            var studios = services.GetRequiredService<Studios>();
            return new StoreFreshness(studios.Many is not null, studios.Fresh);
        });
        builder.Services.AddSingleton<KeyAuthentication>();
        builder.Services.AddSingleton<Workbooks.WorkbookWords>();
        builder.Services.AddSingleton<Demo.DemoLog>();
        builder.Services.AddSingleton<Demo.DemoStudio>();
        builder.Services.UseLazyDemo();
        builder.Services.AddSingleton<StoreInitializer>();
        builder.Services.AddHostedService(services => services.GetRequiredService<StoreInitializer>());
        builder.Services.AddSingleton(services => new StudioBackups(services.GetRequiredService<Studios>().ToBackUp));
        builder.Services.AddHostedService<BackupSchedule>();
        builder.Services.AddHostedService<KeyUseWriter>();
    }

    public static void UseDocuments(this WebApplicationBuilder builder)
    {
        builder.Services.ConfigureHttpJsonOptions(json => WireJson.Configure(json.SerializerOptions));
        builder.Services
            .AddSingleton<IValidator<CostProfile>, CostProfileValidator>()
            .AddSingleton<IValidator<Design>, DesignValidator>()
            .AddSingleton<IValidator<Channel>, ChannelValidator>()
            .AddSingleton<IValidator<ListedPrice>, NoRules<ListedPrice>>()
            .AddSingleton<IValidator<ReadingRules>, ReadingRulesValidator>()
            .AddSingleton<IValidator<Quote>, QuoteValidator>()
            .AddSingleton<IValidator<QuoteFiguresRequest>, QuoteFiguresRequestValidator>()
            .AddSingleton<IValidator<QuoteReviseRequest>, NoRules<QuoteReviseRequest>>()
            .AddSingleton<IValidator<QuoteOutcome>, NoRules<QuoteOutcome>>()
            .AddSingleton<IValidator<QuoteActual>, NoRules<QuoteActual>>()
            .AddSingleton<IValidator<Scenario>, ScenarioValidator>()
            .AddSingleton<IValidator<SurenessRequest>, SurenessRequestValidator>()
            .AddSingleton<IValidator<WhatIfRequest>, WhatIfRequestValidator>()
            .AddSingleton<IValidator<StatementLayout>, StatementLayoutValidator>()
            .AddSingleton<IValidator<Plan>, PlanValidator>()
            .AddSingleton<IValidator<PlanProgressRequest>, NoRules<PlanProgressRequest>>()
            .AddSingleton<IValidator<PlanMonthsRequest>, PlanMonthsRequestValidator>()
            .AddSingleton<IValidator<FloorPriceRequest>, FloorPriceRequestValidator>()
            .AddSingleton<IValidator<PriceCheckRequest>, NoRules<PriceCheckRequest>>()
            .AddSingleton<IValidator<OrderCheckRequest>, OrderCheckRequestValidator>()
            .AddSingleton<IValidator<BreakEvenRequest>, BreakEvenRequestValidator>()
            .AddSingleton<IValidator<DesignBudgetRequest>, DesignBudgetRequestValidator>()
            .AddSingleton<IValidator<FirstNumbers>, FirstNumbersValidator>()
            .AddSingleton<IValidator<YearPlanRequest>, NoRules<YearPlanRequest>>()
            .AddSingleton<IValidator<BestPlanRequest>, BestPlanRequestValidator>()
            .AddSingleton<IValidator<MarkupRequest>, MarkupRequestValidator>()
            .AddSingleton<IValidator<KeyRequest>, KeyRequestValidator>()
            .AddSingleton<IValidator<HostedStudio>, NoRules<HostedStudio>>();
    }
}
