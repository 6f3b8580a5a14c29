using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.ManyStudios;
using PriceFloor.Storage;
using Xunit;

namespace PriceFloor.Api.Tests.ManyStudios;

/// <summary>What belongs to a studio, and what all studios share.</summary>
public sealed class StudioPartTests
{
    /// <summary>Shared services that work for the process's own store, and answer nobody's request from it.</summary>
    private static readonly string[] s_ofTheProcess =
        ["BackupSchedule", "DemoLog", "DemoStudio", "KeyAuthentication", "KeyUseWriter", "Readiness", "StoreInitializer", "WarmUp"];

    [Fact]
    public async Task Two_studios_have_no_part_in_common()
    {
        await using var service = new Studio();
        var own = service.Services.GetRequiredService<Studios>().Own;
        var clock = service.Services.GetRequiredService<TimeProvider>();
        using var other = new Api.ManyStudios.Studio(own.Place, own.Folder, new Store(own.Place.Engine(clock), clock), service.Services);

        foreach (var part in StudioParts.Types)
            Assert.NotSame(own.GetService(part), other.GetService(part));
        Assert.Same(own.GetService(typeof(Settings)), other.GetService(typeof(Settings)));
    }

    [Fact]
    public async Task A_part_is_made_once()
    {
        await using var service = new Studio();
        var own = service.Services.GetRequiredService<Studios>().Own;

        Assert.Same(own.GetService(typeof(CatalogueSource)), own.GetService(typeof(CatalogueSource)));
        Assert.Same(own.GetService(typeof(KeyRing)), service.Services.GetRequiredService<KeyRing>());
        Assert.Same(own.Store, service.Services.GetRequiredService<Store>());
    }

    [Fact]
    public async Task No_shared_service_holds_a_part_of_a_studio()
    {
        List<ServiceDescriptor> all = [];
        await using var service = new Studio(configure: host => host.ConfigureServices(services => all.AddRange(services)));
        await service.Get("/health/live");

        var holders = all.Where(one => !StudioParts.Types.Contains(one.ServiceType)).Select(one => one.ImplementationType).OfType<Type>()
            .Where(type => type.Assembly == typeof(Program).Assembly)
            .Where(type => type.GetConstructors().SelectMany(made => made.GetParameters()).Any(one => StudioParts.Types.Contains(one.ParameterType)))
            .Select(type => type.Name).Order(StringComparer.Ordinal);
        Assert.Equal(s_ofTheProcess, holders);
    }
}
