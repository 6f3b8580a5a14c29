using System.Collections.Frozen;
using FluentValidation;
using PriceFloor.Api.Access;
using PriceFloor.Api.Backups;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Changes;
using PriceFloor.Api.Channels;
using PriceFloor.Api.Designs;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Evidence.Logged;
using PriceFloor.Api.ListedPrices;
using PriceFloor.Api.Plans;
using PriceFloor.Api.PriceChecks;
using PriceFloor.Api.Profiles;
using PriceFloor.Api.Quotes;
using PriceFloor.Api.ReadingRuleSets;
using PriceFloor.Api.Scenarios;
using PriceFloor.Api.StatementLayouts;
using PriceFloor.Api.Telemetry;
using PriceFloor.Statements;

namespace PriceFloor.Api.ManyStudios;

/// <summary>Everything that belongs to one studio and to no other: what is not in this list, all studios share.</summary>
public static class StudioParts
{
    private static readonly IReadOnlyList<(Type Type, Func<Studio, object> Make)> s_all =
    [
        Part(studio => studio.Store),
        Part(studio => new CatalogueSource(studio.Store, studio.Get<TimeProvider>())),
        Part(studio => new ClearingPrices(studio.Store)),
        Part(studio => new KeptLogAnswers(studio.Store)),
        Part(_ => new LogWatch()),
        Part(_ => new LoggedShelves()),
        Part(studio => new LoggedDesigns(studio.Get<LoggedShelves>())),
        Part<IDesignLearning>(studio => new LearningByLog(studio.Get<LogWatch>())),
        Part(studio => studio.Host is { } host ? new KeyUses(host.Get<KeyUses>(), studio.Key!) : new KeyUses()),
        Part(studio => new KeyRing(studio.Store, studio.Get<KeyUses>(), studio.Host is { } host ? () => FollowAsync(host, studio) : null)),
        Part(studio => new BackupFolder(studio.Folder, studio.Place, studio.Store, studio.Get<ServiceCounts>(), studio.Get<TimeProvider>())),
        Part<DocumentKind<CostProfile>>(studio => new ProfileDocuments(studio.Rules<CostProfile>())),
        Part<DocumentKind<Design>>(studio => new DesignDocuments(studio.Rules<Design>(), studio.Get<CatalogueSource>())),
        Part<DocumentKind<Channel>>(studio => new ChannelDocuments(studio.Rules<Channel>())),
        Part<DocumentKind<ListedPrice>>(studio => new ListedPriceDocuments(studio.Rules<ListedPrice>(), studio.Get<CatalogueSource>())),
        Part<DocumentKind<Plan>>(studio => new PlanDocuments(studio.Rules<Plan>(), studio.Get<CatalogueSource>())),
        Part<DocumentKind<ReadingRules>>(studio => new ReadingRuleDocuments(studio.Rules<ReadingRules>())),
        Part<DocumentKind<Scenario>>(studio => new ScenarioDocuments(studio.Rules<Scenario>(), studio.Get<CatalogueSource>())),
        Part<DocumentKind<StatementLayout>>(studio => new StatementLayoutDocuments(studio.Rules<StatementLayout>())),
        Part<DocumentKind<Quote>>(studio =>
            new QuoteDocuments(studio.Rules<Quote>(), studio.Get<CatalogueSource>(), studio.Get<TimeProvider>())),
        Part<DocumentKind<QuoteOutcome>>(studio => new QuoteOutcomeDocuments(studio.Rules<QuoteOutcome>())),
        Part<DocumentKind<QuoteActual>>(studio => new QuoteActualDocuments(studio.Rules<QuoteActual>())),
        Part<DocumentKind<HostedStudio>>(studio => new HostedStudioDocuments(studio.Rules<HostedStudio>(), studio.Get<Studios>())),
    ];

    private static readonly FrozenDictionary<Type, StudioPart> s_byType =
        s_all.Select((part, place) => new StudioPart(place, part.Type, part.Make)).ToFrozenDictionary(part => part.Type);

    public static int Count => s_all.Count;

    public static IEnumerable<Type> Types => s_all.Select(part => part.Type);

    public static StudioPart? Find(Type type) => s_byType.GetValueOrDefault(type);

    /// <summary>Outside of a request, and with one studio also within, the container gives the parts of the process's own studio.</summary>
    public static void UseStudioParts(this IServiceCollection services)
    {
        foreach (var (type, _) in s_all)
            services.AddSingleton(type, provider => provider.GetRequiredService<Studios>().Own.GetRequiredService(type));
    }

    private static (Type Type, Func<Studio, object> Make) Part<T>(Func<Studio, T> make) where T : class => (typeof(T), make);

    /// <summary>The host knows every key. If it cannot be told, requests are asked about in the studio until it is opened again.</summary>
    private static async Task FollowAsync(Studio host, Studio studio)
    {
        try
        {
            await new StudioKeys(host.Store, host.Get<KeyRing>()).Follow(studio.Key!, studio.Store);
        }
        catch
        {
            studio.HadOtherKeys = true;
            throw;
        }
    }

    private static T Get<T>(this Studio studio) where T : notnull => studio.GetRequiredService<T>();

    private static IValidator<T> Rules<T>(this Studio studio) => studio.GetRequiredService<IValidator<T>>();
}

/// <summary>A part of a studio.</summary>
/// <param name="Place">Its place among the parts.</param>
/// <param name="Type">How it is asked for.</param>
/// <param name="Make">Makes it.</param>
public sealed record StudioPart(int Place, Type Type, Func<Studio, object> Make);
