using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Access;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.Telemetry;
using PriceFloor.Api.Tests.Http.Reading;
using Xunit;

namespace PriceFloor.Api.Tests.Contract.Fuzz;

/// <summary>
/// Every operation of the contract, with valid, nearly valid and invalid requests. PRICEFLOOR_FUZZ_SEED and PRICEFLOOR_FUZZ_COUNT make other runs; a
/// failure reports its seed, which repeats it.
/// </summary>
public sealed class FuzzedContractTests(ITestOutputHelper output)
{
    /// <summary>Of so many requests every operation must have succeeded once; up to as many again are sent for those that have not.</summary>
    private const int Whole = 4600;

    private static int Setting(string name, int otherwise) =>
        int.TryParse(Environment.GetEnvironmentVariable(name), CultureInfo.InvariantCulture, out var set) ? set : otherwise;

    [Fact]
    public async Task Whatever_is_asked_the_answer_is_in_the_contract()
    {
        var (seed, count) = (Setting("PRICEFLOOR_FUZZ_SEED", 20270104), Setting("PRICEFLOOR_FUZZ_COUNT", Whole));
        var causes = new Causes();
        await using var studio = new Studio(configure: host => host.ConfigureServices(services => services.AddSingleton<IStartupFilter>(causes)));
        var contract = await ContractDocument.Of(studio);
        var fuzzing = new Fuzzing(studio, contract, seed);

        await fuzzing.Run(count);
        for (var more = 0; more < count && count >= Whole && NeverSucceeded().Any(); more += 500)
            await fuzzing.Run(500); // which operations have had their luck by now depends on how many there are

        output.WriteLine($"seed {seed}, {fuzzing.Statuses.Values.Sum()} requests: "
            + $"{string.Join(", ", fuzzing.Statuses.Select(one => $"{one.Value} x {one.Key}"))}");
        Assert.True(fuzzing.Faults.Count == 0, string.Join('\n', fuzzing.Faults.Concat(causes.Found)));
        // If all requests were refused, or all accepted, they would test only half of the service.
        Assert.True(fuzzing.Statuses.Where(one => one.Key < 300).Sum(one => one.Value) > count / 5, $"{fuzzing.Statuses.Count}");
        Assert.True(fuzzing.Statuses.Where(one => one.Key >= 400).Sum(one => one.Value) > count / 4);
        if (count >= Whole)
            Assert.Empty(NeverSucceeded());

        IEnumerable<string> NeverSucceeded() =>
            contract.Operations.Where(one => !GoodBodies.IsHosts(one.Path))
                .Select(one => one.Operation["operationId"]!.GetValue<string>()).Except(fuzzing.Succeeded.Keys);
    }

    /// <summary>Proves that the fuzzer notices faults.</summary>
    [Theory]
    [InlineData("status", "418 is not in the contract for this operation")]
    [InlineData("body", "200: : ")]
    [InlineData("page", " as text/html")]
    [InlineData("half", "422, but something was written")]
    [InlineData("crash", "500")]
    public async Task A_fault_that_is_planted_is_found(string plant, string reported)
    {
        await using var studio =
            new Studio(configure: host => host.ConfigureServices(services => services.AddSingleton<IStartupFilter>(new Planted(plant))));
        var fuzzing = new Fuzzing(studio, await ContractDocument.Of(studio), 20270103);

        await fuzzing.Run(4000, mostFaults: 1); // it ends with the first

        Assert.Contains(fuzzing.Faults, fault => fault.Contains(reported, StringComparison.Ordinal));
    }

    /// <summary>The exceptions behind answers of 500, which no answer shows.</summary>
    private sealed class Causes : IStartupFilter
    {
        public List<string> Found { get; } = [];

        public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) => app =>
        {
            app.Use(async (HttpContext context, RequestDelegate rest) =>
            {
                await rest(context);
                if (context.Features.Get<CaughtFault>() is { Exception: var cause })
                    Found.Add($"{context.Request.Method} {context.Request.Path}: {cause}");
            });
            next(app);
        };
    }

    /// <summary>A service with one fault.</summary>
    private sealed class Planted(string fault) : IStartupFilter
    {
        public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) => app =>
        {
            app.Use(Spoil);
            next(app);
        };

        private async Task Spoil(HttpContext context, RequestDelegate next)
        {
            var isList = context.Request.Method == "GET" && context.Request.Path == "/v1/channels";
            switch (fault)
            {
                case "status" when isList:
                    context.Response.StatusCode = 418;
                    await Write(context, "application/problem+json", """{"status":418}""");
                    break;
                case "body" when isList:
                    await Write(context, "application/json", """{"things":[]}""");
                    break;
                case "page" when isList:
                    context.Response.StatusCode = 422;
                    await Write(context, "text/html", "<p>No.");
                    break;
                case "crash" when isList:
                    context.Response.StatusCode = 500;
                    await Write(context, "application/problem+json", """{"status":500}""");
                    break;
                case "half" when context.Request.Path == "/v1/keys" && context.Request.Method == "POST":
                    context.Response.OnStarting(() =>
                        Task.FromResult(context.Response.StatusCode = context.Response.StatusCode == 201 ? 422 : context.Response.StatusCode));
                    await next(context);
                    break;
                default:
                    await next(context);
                    break;
            }
        }

        private static Task Write(HttpContext context, string type, string text)
        {
            context.Response.ContentType = type;
            return context.Response.WriteAsync(text);
        }
    }
}
