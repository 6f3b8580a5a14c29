using System.Text.Json;

namespace PriceFloor.Benchmarks;

/// <summary>
/// Single price checks of the published service beside a service that was written by hand for Node and answers the same; and that one beside a bare
/// Minimal API, which is the most that ours could reach.
/// </summary>
public static class BesideNode
{
    private static readonly WantedOfChecks s_wanted = new(Rate: "at least 2.7");

    public static Task RunAsync(string[] args) => Verb.PrintAsync(figures => MeasureAsync(figures, args));

    public static async Task MeasureAsync(Figures figures, string[] args)
    {
        var (folder, why) = await NodeService.InstallAsync();
        if (folder is null)
        {
            Console.WriteLine($"skipped: beside Node: {why}");
            return;
        }

        var published = await Published.Folder;
        var priceList = await PriceListOfTheSameAnswersAsync(published, folder);
        await new ChecksInTurn("node", s_wanted).MeasureAsync(figures, args,
            () => NodeService.StartAsync(folder, ChecksInTurn.ReferencePort, priceList),
            () => CheckingService.OursAsync(published, ChecksInTurn.OurPort));
        await new ChecksInTurn("bare", new WantedOfChecks(), by: " (Node's)").MeasureAsync(figures, args,
            () => BareApi.AsCheckingAsync(published, ChecksInTurn.ReferencePort),
            () => NodeService.StartAsync(folder, ChecksInTurn.OurPort, priceList));
    }

    /// <summary>The price list that the service in Node starts from, after both have answered a check alike.</summary>
    private static async Task<string> PriceListOfTheSameAnswersAsync(string published, string folder)
    {
        await using var studio = await BenchStudio.StartAsync(published, ChecksInTurn.OurPort);
        await studio.ArrangeAsync(200);
        var priceList = await studio.SendAsync(HttpMethod.Get, "/v1/price-list");
        await using var node = await NodeService.StartAsync(folder, ChecksInTurn.ReferencePort, priceList);
        var (ofNode, ofOurs) = (await AnswerAsync(node.Process, node.Key), await AnswerAsync(studio.Process, await studio.MakeKeyAsync()));
        return JsonElement.DeepEquals(ofNode, ofOurs) ? priceList
            : throw new InvalidOperationException($"The two services answer differently: {ofNode} and {ofOurs}");
    }

    private static async Task<JsonElement> AnswerAsync(ServedProcess process, string key) =>
        JsonDocument.Parse((await Load.AskAsync(process.Port, WireRequest.Check(key))).Answer.Body).RootElement;
}
