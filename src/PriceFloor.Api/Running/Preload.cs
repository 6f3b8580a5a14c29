using System.Text.Json;
using PriceFloor.Api.Access;
using PriceFloor.Api.HealthChecks;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Running;

/// <summary>
/// Loads what the store and the first answers need while the host is put together: neither waits for the other. What fails here fails again where it
/// is needed, and is told there.
/// </summary>
public static class Preload
{
    public static void Begin() => _ = Task.Run(() =>
    {
        Engine.LoadLibraries();
        JsonSerializer.SerializeToUtf8Bytes(new HealthAnswer(""), WireJson.Options);
        KeyRing.HashOf("");
    });
}
