using System.Text;
using Xunit;

namespace PriceFloor.Api.Tests.Contract.Fuzz;

/// <summary>Values of every kind in every place of every document: a stored document can be put back, and questions about it are answered.</summary>
public sealed class FuzzedDocumentTests
{
    private const string Line = """{"sku":"RB-014","channel":"web","price":1000000000000,""";

    private static readonly string[] s_gets =
    [
        "/v1/profiles/main/requirement?", "/v1/designs/RB-014/floor-price?", "/v1/price-checks?sku=RB-014&channel=web&price=58&",
        "/v1/designs/RB-014/remedies?channel=web&price=58&",
        "/v1/designs/RB-014/break-even?channel=web&price=1000000000000&planned=1000000&", "/v1/designs/RB-014/price-parts?channel=web&price=58&",
        "/v1/quotes/Q-1/figures?",
    ];

    private static readonly (string Path, string Body)[] s_posts =
    [
        ("/v1/break-even", $$"""{"profile":"main","lines":[{{Line}}"ratio":1000000}],"surplus":{"amount":1000000000000,"tax":"after"} }"""),
        ("/v1/year-plans", $$"""{"profile":"main","lines":[{{Line}}"units":1000000}],"hoursKeptBack":1}"""),
        ("/v1/year-plans/best", $$"""{"profile":"main","goal":"maximum-surplus","lines":[{{Line}}"maximum":1000000}]}"""),
        ("/v1/design-budgets", """{"profile":"main","channel":"web","price":58,"materials":1}"""),
    ];

    [Theory]
    [InlineData("/v1/profiles/main", Sample.Rich, 20270103)]
    [InlineData("/v1/designs/RB-014", Sample.RichDesign, 20270104)]
    [InlineData("/v1/channels/web", Sample.RichChannel, 20270105)]
    [InlineData("/v1/quotes/Q-1", Sample.RichQuote, 20270106)]
    public async Task Any_value_in_any_place_is_answered(string path, string document, int seed)
    {
        await using var studio = new Studio();
        var fuzzing = new Fuzzing(studio, await ContractDocument.Of(studio), seed);
        await studio.Has("/v1/profiles/main", Sample.Rich);
        await studio.Has("/v1/designs/RB-014", Sample.RichDesign);
        await studio.Has("/v1/channels/web", Sample.RichChannel);
        await studio.Has("/v1/quotes/Q-1", Sample.RichQuote);
        var random = new Random(seed);
        for (var i = 0; i < 60; i++)
        {
            var text = ChangedDocument.Of(document, random);
            var answer = await Ask("PUT", path, text, 200, 400, 409, 422);
            if (answer.Status != 200)
                continue;
            Assert.Equal(answer.Text, (await Ask("PUT", path, answer.Text, 200)).Text);
            foreach (var question in s_gets)
                await Ask("GET", question + "workings=true", null, 200, 422);
            foreach (var (question, body) in s_posts)
                await Ask("POST", question + "?workings=true", body, 200, 422);

            async Task<Answer> Ask(string method, string address, string? body, params int[] statuses)
            {
                var request = new FuzzedRequest(address, method);
                if (body is not null)
                    (request.ContentType, request.Body) = ("application/json", Encoding.UTF8.GetBytes(body));
                var told = await fuzzing.Ask(request);
                Assert.True(statuses.Contains(told!.Status), $"{told.Status} to {address}: {text}");
                return told;
            }
        }

        Assert.True(fuzzing.Faults.Count == 0, string.Join('\n', fuzzing.Faults));
    }
}
