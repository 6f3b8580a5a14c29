// The main job through a client made from the contract by Kiota (.ci/clients): store a year, a design and a shop, check a price, read a floor,
// plan the year. Nothing made is committed.
using System.Net.Http.Headers;
using Microsoft.Kiota.Abstractions.Authentication;
using Microsoft.Kiota.Http.HttpClientLibrary;
using PriceFloor.Client;
using PriceFloor.Client.Models;

var address = Environment.GetEnvironmentVariable("PRICEFLOOR_URL") ?? "http://127.0.0.1:5080";
var sent = new LastBody { InnerHandler = new HttpClientHandler() };
using var http = new HttpClient(sent);
// Kiota's own provider of keys wants https, which a service on this machine has not.
http.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", Environment.GetEnvironmentVariable("PRICEFLOOR_KEY"));
var client = new PriceFloorClient(new HttpClientRequestAdapter(new AnonymousAuthenticationProvider(), httpClient: http) { BaseUrl = address });
var passed = 0;

// 24,000 for the business and 3,000 a month for the household: 60,000 over 2,000 bench hours is 30.00 an hour.
var profile = await client.V1.Profiles["cs-year"].PutAsync(new CostProfile
{
    Currency = "USD",
    Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
    Expenses = [new Expense { Name = "Everything the business pays", Amount = 24000.00m, Per = Per.Year, CostKind = CostKind.InterestAndLoans }],
    Household = [new HouseholdLine { Name = "Everything at home", Amount = 3000, Per = Per.Month }],
});
Check("a word with hyphens goes out as the contract writes it",
    sent.Request.Contains("\"costKind\":\"interest-and-loans\"", StringComparison.Ordinal), true);
Check("what is not set and has no default is not sent", sent.Request.Contains("yearStart", StringComparison.Ordinal), false);
Check("money goes out with its cents", sent.Request.Contains("\"amount\":24000.00", StringComparison.Ordinal), true);
Check("a word with hyphens comes back", profile?.Expenses?[0].CostKind, CostKind.InterestAndLoans);
Check("the revision", profile?.Revision, 1);

var design = await client.V1.Designs["CS-1"].PutAsync(new Design
{
    Name = "River drop pendant",
    Profile = "cs-year",
    Making = new Making { PiecesPerDay = 4 },
});
Check("defaults are filled in", design?.Making?.GoodShare, 1m);
var channel = await client.V1.Channels["cs-shop"].PutAsync(new Channel
{
    Sells = Sells.Retail, Currency = "USD", Fees = [new Fee { Name = "card", Rate = 0.024m, Fixed = 0.25m, Of = FeeBase.PriceAndShipping }],
});
Check("the base of a fee", channel?.Fees?[0].Of, FeeBase.PriceAndShipping);

// Four a day are two hours each: 60.00. The shop takes 2.4 % and 0.25: (60 + 0.25) / 0.976 = 61.7315..., so 61.74.
var check = await client.V1.PriceChecks.PostAsync(new PriceCheckRequest { Sku = "CS-1", Channel = "cs-shop", Price = 58.00m });
Check("58.00 is below the floor", check?.Verdict, Verdict.BelowFloor);
Check("the floor price, to the cent", check?.FloorPrice, 61.74m);
Check("money keeps its decimals", check?.Price?.ToString(System.Globalization.CultureInfo.InvariantCulture), "58.00");

var floor = await client.V1.Designs["CS-1"].FloorPrice.GetAsync(request => request.QueryParameters.Workings = true);
Check("the floor", floor?.Floor, 60.00m);
Check("its workings", floor?.Workings?.Count > 5, true);

// 120 less 2.4 % and 0.25 leaves 116.87; 600 of them leave 70,122 toward 60,000.
var plan = await client.V1.YearPlans.PostAsync(new YearPlanRequest
{
    Profile = "cs-year",
    Lines = [new PlanLineRequest { Sku = "CS-1", Channel = "cs-shop", Price = 120, Units = 600 }],
});
Check("600 pieces close the year", plan?.Closes, true);
Check("what is left over", plan?.SurplusBeforeTax, 10122.00m);

// What if: a stored profile by its key, a design inline.
var whatIf = await client.V1.FloorPrices.PostAsync(new FloorPriceRequest
{
    Profile = new CostProfileKeyOr { String = "cs-year" },
    Design = new DesignKeyOr { InlineDesign = new InlineDesign { Making = new Making { PiecesPerDay = 8 } } },
});
Check("twice as many a day cost half", whatIf?.Floor, 30.00m);

try
{
    await client.V1.PriceChecks.PostAsync(new PriceCheckRequest { Sku = "CS-1", Channel = "nowhere", Price = 58 });
    throw new InvalidOperationException("an unknown channel was not refused");
}
catch (ProblemBody problem)
{
    Check("a problem is typed", (problem.Type, problem.Status, problem.Errors?[0].Code), ("/problems/unknown-reference", 422, "unknown-channel"));
}

// A batch answers in order: each item is an answer or a problem, and says what it is about.
var batch = await client.V1.PriceChecks.Batch.PostAsync([
    new PriceCheckRequest { Sku = "CS-1", Channel = "cs-shop", Price = 58 },
    new PriceCheckRequest { Sku = "CS-1", Channel = "nowhere", Price = 58 },
]);
var (first, second) = (batch?.Items?[0], batch?.Items?[1]);
Check("the first of a batch is an answer", (first?.PriceCheckAnswer?.Sku, first?.PriceCheckAnswer?.Verdict, first?.PriceCheckAnswer?.FloorPrice),
    ("CS-1", Verdict.BelowFloor, 61.74m));
Check("the second is a problem", (second?.ProblemBody?.Status, second?.ProblemBody?.Errors?[0].Code), (422, "unknown-channel"));

await client.V1.Channels["cs-shop"].DeleteAsync();
var history = await client.V1.Channels["cs-shop"].Revisions.GetAsRevisionsGetResponseAsync();
Check("a revision is the document", (history?.Items?[0].Channel?.Revision, history?.Items?[0].Channel?.Sells), (1L, Sells.Retail));
Check("a deletion says so", history?.Items?[1].Deletion?.Deleted, true);

Console.WriteLine($"csharp: {passed} checks passed");

void Check<T>(string what, T actual, T expected)
{
    if (!EqualityComparer<T>.Default.Equals(actual, expected))
        throw new InvalidOperationException($"{what}: {actual} instead of {expected}");
    passed++;
}

/// <summary>Keeps what was sent, as text.</summary>
internal sealed class LastBody : DelegatingHandler
{
    public string Request { get; private set; } = "";

    protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
    {
        Request = request.Content is null ? "" : await request.Content.ReadAsStringAsync(cancellationToken);
        return await base.SendAsync(request, cancellationToken);
    }
}
