using PriceFloor.Api.OpenApi;
using PriceFloor.Api.Tests.Http.Reading;
using PriceFloor.Api.Tests.ManyStudios;
using Xunit;

namespace PriceFloor.Api.Tests.Contract.Fuzz;

/// <summary>Damaged bodies and odd addresses: each is answered or refused as the contract says, and none is a fault of the service.</summary>
public sealed class FuzzedTextTests
{
    private const int Seed = 20270107;

    [Fact]
    public async Task Whatever_bytes_are_in_a_body_the_answer_is_in_the_contract()
    {
        await using var studio = new Studio();
        var contract = await ContractDocument.Of(studio);
        var fuzzing = new Fuzzing(studio, contract, Seed);

        await fuzzing.Run(DamagedBodies.WithOddBytes(new Random(Seed)));

        Assert.True(fuzzing.Faults.Count == 0, string.Join('\n', fuzzing.Faults));
        var reading = contract.Operations.Where(one => one.Operation["requestBody"] is not null && !GoodBodies.IsHosts(one.Path))
            .Select(one => one.Operation["operationId"]!.GetValue<string>()).ToList();
        Assert.True(reading.Count > 10);
        Assert.Empty(reading.Except(fuzzing.Asked));
        // If all bodies were refused, or all accepted, they would test only half of the service.
        Assert.True(fuzzing.Statuses[200] > 100 && fuzzing.Statuses[400] > 200 && fuzzing.Statuses[422] > 50, string.Join(", ", fuzzing.Statuses));
    }

    [Fact]
    public async Task Whatever_bytes_are_in_a_body_for_the_host_the_answer_is_in_the_contract()
    {
        await using var host = HostedService.Start();
        var contract = await ContractDocument.Of(host);
        await host.HasASmallShop(await host.HasStudio("harbour"));
        var export = (await host.Get("/v1/studios/harbour/export")).Text;
        var fuzzing = new Fuzzing(host, contract, Seed, () => host.Put("/v1/studios/harbour", """{"name":"Harbour studio"}"""));

        await fuzzing.Run(DamagedBodies.OfHosts(export, new Random(Seed)));

        Assert.True(fuzzing.Faults.Count == 0, string.Join('\n', fuzzing.Faults));
        var reading = contract.Operations.Where(one => one.Operation["requestBody"] is not null && GoodBodies.IsHosts(one.Path))
            .Select(one => one.Operation["operationId"]!.GetValue<string>()).ToList();
        Assert.Equal(3, reading.Count);
        Assert.Empty(reading.Except(fuzzing.Asked));
        Assert.True(fuzzing.Statuses[400] > 30 && fuzzing.Statuses[422] > 2, string.Join(", ", fuzzing.Statuses));
    }

    [Fact]
    public async Task Whatever_else_is_sent_the_answer_is_in_the_contract()
    {
        await using var studio = new Studio();
        var fuzzing = new Fuzzing(studio, await ContractDocument.Of(studio), Seed);
        var random = new Random(Seed);

        await fuzzing.Run(
            [.. DamagedBodies.AtRandom(random), .. DamagedBodies.OfProfiles(random), .. DamagedBodies.OfWhatIfs(random), .. OddAddresses.All]);

        Assert.True(fuzzing.Faults.Count == 0, string.Join('\n', fuzzing.Faults));
    }
}
