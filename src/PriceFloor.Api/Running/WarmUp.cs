using System.Text.Json;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.PriceChecks;
using Serilog;

namespace PriceFloor.Api.Running;

/// <summary>
/// What a first price check would otherwise wait for, done beside the rest of the start as soon as the store is open: the keys and documents come
/// into memory, and one check that nobody asked for makes the way for those that follow.
/// </summary>
public sealed class WarmUp(Opening opening, KeyRing ring, RecordKeeper keeper, EndpointDataSource endpoints, IHostApplicationLifetime lifetime) : BackgroundService
{
    private const string Checks = "/v1/price-checks";

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var started = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        await using var told = lifetime.ApplicationStarted.Register(started.SetResult);
        try
        {
            await opening.Done.WaitAsync(stoppingToken);
            Check();
            await started.Task.WaitAsync(stoppingToken); // before that the endpoints are not known
            PrepareHandlers();
        }
        catch (Exception e)
        {
            Log.Debug(e, "The first price check was not prepared"); // whoever asks is told what is wrong, and nobody asks a service that stops
        }
    }

    private void PrepareHandlers()
    {
        foreach (var endpoint in endpoints.Endpoints.OfType<RouteEndpoint>().Where(endpoint => endpoint.RoutePattern.RawText == Checks))
            endpoint.Metadata.GetMetadata<LateHandler>()?.Prepare();
    }

    private void Check()
    {
        ring.Identify("nobody's");
        keeper.Read(asOf: null, records =>
        {
            if (records.Documents.Designs is not [var design, ..] || records.Channels is not [var channel, ..])
                return false;
            var body = JsonSerializer.SerializeToUtf8Bytes(new PriceCheckRequest { Sku = design.Key, Channel = channel.Key, Price = 1 }, WireJson.Options);
            var asked = JsonBody<PriceCheckRequest>.Parse(body, new NoRules<PriceCheckRequest>());
            var found = CheckedPrice.Of(records, asked.Value, at: "#").Found;
            var answer = found?.Answer(new Caller("", Enum.GetValues<Scope>().ToHashSet()), workings: false);
            return JsonSerializer.SerializeToUtf8Bytes(answer, WireJson.Options).Length > 0;
        });
    }
}
