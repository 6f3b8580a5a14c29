using System.Globalization;

namespace PriceFloor.Benchmarks;

/// <summary>Order checks of one item and of fifty beside single price checks, all of the same service in the same process, in turn.</summary>
public static class OrdersBesideChecks
{
    private const int Port = 5491, Connections = 16;
    private const double SecondsOfWarming = 6;

    private static readonly int[] s_items = [1, 50];

    public static Task RunAsync(string[] args) => Verb.PrintAsync(figures => MeasureAsync(figures, args));

    public static async Task MeasureAsync(Figures figures, string[] args)
    {
        var (seconds, rounds) = Numbers.Of(args, 3, 5) is [var a, var b] ? (a, b) : default;
        await using var service = await CheckingService.OursAsync(await Published.Folder, Port);
        var check = WireRequest.Check(service.Key);
        await Load.RunAsync(service.Process, check, Connections, SecondsOfWarming);
        foreach (var items in s_items)
        {
            var order = OrderOf(items, service.Key);
            await Load.RunAsync(service.Process, order, Connections, SecondsOfWarming);
            var on = string.Create(CultureInfo.InvariantCulture, $"order check of {items}, {Connections} connections");
            for (var round = 0; round < rounds; round++)
            {
                var single = await Load.RunAsync(service.Process, check, Connections, seconds);
                var whole = await Load.RunAsync(service.Process, order, Connections, seconds);
                figures.Add($"requests/s, {on}", "", "a price check", single.PerSecond, whole.PerSecond, "");
                figures.Add($"server CPU a request, {on}", " us", "a price check", single.CpuMicrosecondsARequest, whole.CpuMicrosecondsARequest, "");
            }
        }
    }

    private static byte[] OrderOf(int items, string key) => WireRequest.Of("POST", "/v1/order-checks", key,
        $$"""{"channel":"c3","items":[{{string.Join(',', Enumerable.Range(100, items).Select(ItemOf))}}]}""");

    private static string ItemOf(int design) =>
        string.Create(CultureInfo.InvariantCulture, $$"""{"sku":"D-{{design}}","pieces":1,"price":58.00}""");
}
