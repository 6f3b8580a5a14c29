using System.Text.Json;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Running;

/// <summary>Loads what the store and the first answers need while the host is put together: neither waits for the other.</summary>
public static class HeadStart
{
    public static void Begin() => _ = Task.Run(() =>
    {
        Store.LoadLibraries();
        JsonSerializer.SerializeToUtf8Bytes(new HealthAnswer(""), WireJson.Options);
        KeyRing.HashOf("");
    });
}
