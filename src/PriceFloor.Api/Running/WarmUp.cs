using System.Text.Json;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.HealthChecks;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.PriceChecks;
using Serilog;

namespace PriceFloor.Api.Running;

/// <summary>
/// Prepares the first price check as soon as the service listens: loads the keys and documents into memory, and makes one check that nobody asked
/// for, so the first real one is faster.
/// </summary>
public sealed class WarmUp(StoreReadiness opening, KeyRing ring, CatalogueSource catalogues, TimeProvider clock, IHostApplicationLifetime lifetime)
    : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var started = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        await using var told = lifetime.ApplicationStarted.Register(started.SetResult);
        try
        {
            await started.Task.WaitAsync(stoppingToken);
            await opening.Done.WaitAsync(stoppingToken);
            await Check();
        }
        catch (Exception e)
        {
            Log.Debug(e, "The first price check was not prepared"); // a real check reports what is wrong, and a stopping service gets none
        }
    }

    private async Task Check()
    {
        (await ring.Keys).Identify("nobody's", clock.GetUtcNow());
        await catalogues.SeenBy(ProfileAccess.All).Read(asOf: null, catalogue =>
        {
            if (catalogue.Designs is not [var design, ..] || catalogue.Channels is not [var channel, ..])
                return false;
            var body =
                JsonSerializer.SerializeToUtf8Bytes(new PriceCheckRequest { Sku = design.Key, Channel = channel.Key, Price = 1 }, WireJson.Options);
            var asked = JsonBody<PriceCheckRequest>.Read(body, new NoRules<PriceCheckRequest>());
            var found = CheckedPrice.Of(catalogue, asked.Value, Place.Body).Found;
            var answer = found?.Answer(new Caller("", Enum.GetValues<Scope>().ToHashSet()), workings: false);
            return JsonSerializer.SerializeToUtf8Bytes(answer, WireJson.Options).Length > 0;
        });
    }
}
