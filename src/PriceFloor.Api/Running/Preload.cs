using System.Text.Json;
using PriceFloor.Api.Access;
using PriceFloor.Api.HealthChecks;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Running;

/// <summary>
/// Loads what the store and the first answers need while the host is built, in parallel. A failure here happens again where the result is needed, and
/// is reported there.
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
