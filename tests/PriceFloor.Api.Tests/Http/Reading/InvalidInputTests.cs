using Xunit;

namespace PriceFloor.Api.Tests.Http.Reading;

/// <summary>Values that break rules: all are reported at once, in order of pointer, and nothing is stored.</summary>
public sealed class InvalidInputTests(SharedStudio shared) : IClassFixture<SharedStudio>
{
    private const string Start = "{\"currency\":\"USD\",\"calendar\":{\"weeksPerYear\":50,\"daysPerWeek\":5,\"hoursPerDay\":8}";

    public static TheoryData<string, string, string> Profiles => new()
    {
        // body, pointer, code
        { """{"calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8}}""", "#/currency", "required" },
        { """{"currency":"USD","calendar":{"weeksPerYear":50,"daysPerWeek":5}}""", "#/calendar/hoursPerDay", "required" },
        { Start.Replace("USD", "usd", StringComparison.Ordinal) + "}", "#/currency", "unknown-currency" },
        { Start.Replace("50", "52.1", StringComparison.Ordinal) + "}", "#/calendar/weeksPerYear", "out-of-range" },
        { Start + """ ,"expenses":[{"amount":-1,"per":"year"}]}""", "#/expenses/0/amount", "out-of-range" },
        { Start + """ ,"expenses":[{"amount":1,"per":"yearly"}]}""", "#/expenses/0/per", "not-one-of" },
        { Start + """ ,"expenses":[{"amount":1,"per":"time"}]}""", "#/expenses/0/times", "required" },
        { Start + """ ,"expenses":[{"amount":1,"per":"year","times":2}]}""", "#/expenses/0/times", "unexpected" },
        { Start + """ ,"expenses":[{"amount":1,"per":"year","costKind":"Rent"}]}""", "#/expenses/0/costKind", "not-one-of" },
        { Start + """ ,"expenses":[{"amount":1.0000001,"per":"year"}]}""", "#/expenses/0/amount", "too-many-decimals" },
        { Start + """ ,"expenses":[{"amount":12345678901234567890123456789,"per":"year"}]}""", "#/expenses/0/amount", "too-many-digits" },
        { Start + """ ,"expenses":[{"amount":1e3,"per":"year"}]}""", "#/expenses/0/amount", "exponent" },
        { Start + """ ,"expenses":[{"amount":"1,000","per":"year"}]}""", "#/expenses/0/amount", "not-a-number" },
        { Start + """ ,"expenses":[{"amount":"$5","per":"year"}]}""", "#/expenses/0/amount", "not-a-number" },
        { Start + """ ,"household":[{"amount":1,"per":"year","businessShare":1.01}]}""", "#/household/0/businessShare", "out-of-range" },
        { Start + """ ,"yearStart":"2027-02-30"}""", "#/yearStart", "not-a-date" },
        { Start + """ ,"yearStart":"9999-01-01"}""", "#/yearStart", "not-a-date" }, // its year would have no end
        { Start + """ ,"soldShare":0}""", "#/soldShare", "out-of-range" },
        { Start + """ ,"materials":[{"material":"rod","price":1},{"material":"rod","price":2}]}""", "#/materials/1/material", "duplicate" },
        { Start.Replace("8}", """8,"benchShare":0}""", StringComparison.Ordinal) + "}", "#/calendar/benchShare", "no-bench-time" },
        { Start + """ ,"otherIncome":[{"amount":1,"per":"year","kind":"net","daysPerYear":250}]}""", "#/otherIncome", "no-workdays" },
        { Start + """ ,"tax":{"kind":"flat"}}""", "#/tax/rate", "required" },
        { Start + """ ,"tax":{"kind":"flat","rate":1}}""", "#/tax/rate", "marginal-rate" },
        { Start + """ ,"tax":{"kind":"levies","levies":[{"bands":[{"rate":0.6}]},{"bands":[{"upTo":9000,"rate":0},{"rate":0.4}]}]}}""",
            "#/tax/levies", "marginal-rate" },
        { Start + """ ,"tax":{"kind":"levies","levies":[{"bands":[{"upTo":9,"rate":0.1},{"upTo":8,"rate":0.2},{"rate":0.3}]}]}}""",
            "#/tax/levies/0/bands/1/upTo", "out-of-order" },
        { Start + """ ,"tax":{"kind":"levies","levies":[{"bands":[{"upTo":9,"rate":0.1}]}]}}""", "#/tax/levies/0/bands/0/upTo", "unexpected" },
        { Start + """ ,"equipment":[{"cost":1,"salvage":2,"depreciation":{"method":"straight-line","lifeYears":8}}]}""",
            "#/equipment/0/salvage", "out-of-range" },
        { Start + """ ,"equipment":[{"cost":1,"depreciation":{"method":"straight-line"}}]}""", "#/equipment/0/depreciation/lifeYears", "required" },
        { Start + """ ,"equipment":[{"cost":1,"depreciation":{"method":"straight-line","lifeYears":1.3}}]}""",
            "#/equipment/0/depreciation/lifeYears", "out-of-range" },
        { Start + """ ,"equipment":[{"cost":1,"depreciation":{"method":"percentages","percentages":[0.6,0.5]}}]}""",
            "#/equipment/0/depreciation/percentages", "out-of-range" },
    };

    public static TheoryData<string, string, string> Designs => new()
    {
        { """{"profile":"main","making":{}}""", "#/making", "exactly-one" },
        { """{"profile":"main","making":{"piecesPerDay":4,"minutesPerPiece":30}}""", "#/making", "exactly-one" },
        { """{"profile":"main","making":{"minutesPerPiece":0}}""", "#/making", "no-bench-time" },
        { """{"profile":"main","making":{"steps":[{"handsOnMinutes":5,"batchSize":0}]}}""", "#/making/steps/0/batchSize", "out-of-range" },
        { """{"profile":"main","making":{"steps":[{"handsOnMinutes":5,"goodShare":0}]}}""", "#/making/steps/0/goodShare", "out-of-range" },
        { """{"profile":"main","making":{"steps":[{"name":"a","handsOnMinutes":5},{"name":"a","handsOnMinutes":5}]}}""",
            "#/making/steps/1/name", "duplicate" },
        { """{"profile":"main","making":{"steps":[{"handsOnMinutes":5}],"goodShare":0.9}}""", "#/making/goodShare", "unexpected" },
        { """{"profile":"main","making":{"piecesPerDay":4,"setupMinutes":5}}""", "#/making/runSize", "required" },
        { """{"profile":"main","making":{"piecesPerDay":4},"materials":[{"amount":1,"at":"polish"}]}""", "#/materials/0/at", "unknown-step" },
        { """{"profile":"main","making":{"piecesPerDay":4},"materials":[{"material":"rod","quantity":1,"amount":1}]}""",
            "#/materials/0", "exactly-one" },
        { """{"profile":"main","making":{"piecesPerDay":4},"materials":[{"amount":1,"wasteShare":0.1}]}""",
            "#/materials/0/wasteShare", "unexpected" },
        { """{"profile":"main","making":{"piecesPerDay":4},"materials":[{"material":"rod","quantity":1,"wasteShare":1}]}""",
            "#/materials/0/wasteShare", "out-of-range" },
        { """{"profile":"main","making":{"piecesPerDay":4},"seconds":{"share":1.5,"price":1}}""", "#/seconds/share", "out-of-range" },
    };

    public static TheoryData<string, string, string> Channels => new()
    {
        { """{"sells":"both","currency":"USD"}""", "#/sells", "not-one-of" },
        { """{"sells":"retail","currency":"XAU"}""", "#/currency", "unknown-currency" },
        { """{"sells":"retail","currency":"USD","shopShare":1}""", "#/shopShare", "takes-everything" },
        { """{"sells":"retail","currency":"USD","fees":[{"rate":0.6,"maximum":3},{"rate":0.5}]}""", "#/fees", "takes-everything" },
        { """{"sells":"retail","currency":"USD","fees":[{"minimum":3,"maximum":2}]}""", "#/fees/0/maximum", "out-of-order" },
        { """{"sells":"retail","currency":"USD","returns":{"share":1}}""", "#/returns/share", "out-of-range" },
        { """{"sells":"retail","currency":"USD","piecesPerOrder":0.5}""", "#/piecesPerOrder", "out-of-range" },
        { """{"sells":"retail","currency":"USD","priceEnding":0.5}""", "#/priceEnding", "unexpected" },
        { """{"sells":"retail","currency":"USD","priceStep":1,"priceEnding":1}""", "#/priceEnding", "out-of-range" },
        { """{"sells":"retail","currency":"JPY","priceStep":0.5}""", "#/priceStep", "too-many-decimals" },
        { """{"sells":"retail","currency":"USD","stall":{"cost":5}}""", "#/stall/pieces", "required" },
    };

    [Theory]
    [MemberData(nameof(Profiles))]
    public Task A_profile_is_refused(string body, string pointer, string code) => IsRefused("/v1/profiles/new", body, pointer, code);

    [Theory]
    [MemberData(nameof(Designs))]
    public Task A_design_is_refused(string body, string pointer, string code) => IsRefused("/v1/designs/new", body, pointer, code);

    [Theory]
    [MemberData(nameof(Channels))]
    public Task A_channel_is_refused(string body, string pointer, string code) => IsRefused("/v1/channels/new", body, pointer, code);

    [Fact]
    public async Task All_faults_are_reported_at_once_in_order_of_pointer()
    {
        await using var studio = new Studio();
        var answer = await studio.Put("/v1/profiles/main", """
            {"currency":"USD","calendar":{"weeksPerYear":99,"daysPerWeek":"abc"},"expenses":[{"amount":-5,"per":"yearly"}],"soldShare":1.5,
             "tax":{"kind":"levies","levies":[{"bands":[{"upTo":5,"rate":0.1},{"upTo":4,"rate":0.5},{"rate":0.5}]}]},"yearStart":"soon"}
            """);
        Assert.Equal(
            ["#/calendar/daysPerWeek", "#/calendar/hoursPerDay", "#/calendar/weeksPerYear", "#/expenses/0/amount", "#/expenses/0/per", "#/soldShare",
                "#/tax/levies/0/bands/1/upTo", "#/yearStart"],
            answer.IsProblem(422, "invalid-input").Pointers);
    }

    [Fact]
    public async Task Rates_that_take_everything_are_reported_beside_all_other_faults()
    {
        await using var studio = new Studio();
        async Task<(IReadOnlyList<string>, IReadOnlyList<string>)> Faults(string body)
        {
            var answer = (await studio.Put("/v1/channels/new", body)).IsProblem(422, "invalid-input");
            return (answer.Pointers, answer.Codes);
        }

        // Everything around the rates is wrong: a name, a currency, a stall without pieces, a step, costs; and 0.6 + 0.5 take it all.
        var all = await Faults($$"""
            {"name":"{{new string('n', 201)}}","sells":"both","currency":"XAU","fees":[{"name":"{{new string('f', 201)}}","rate":0.6},{"rate":0.5}],
             "stall":{"cost":5},"priceStep":0,"costPerPiece":-1,"shipping":{"cost":-1} }
            """);
        Assert.Equal(["#/costPerPiece", "#/currency", "#/fees", "#/fees/0/name", "#/name", "#/priceStep", "#/sells", "#/shipping/cost",
            "#/stall/pieces"], all.Item1);
        Assert.Equal("takes-everything", all.Item2[2]);

        // If a field that it needs is wrong itself, nothing is guessed.
        foreach (var wrong in new[]
        {
            """ "fees":[{"rate":0.6,"fixed":"x"},{"rate":0.5}]""",
            """ "shopShare":1,"returns":{"share":2}""",
            """ "shopShare":1,"salesTax":{"rate":-1}""",
            """ "shopShare":1,"piecesPerOrder":0""",
            """ "shopShare":1,"shipping":{"charged":-1}""",
        })
            Assert.Single((await Faults($$"""{"sells":"retail","currency":"USD",{{wrong}} }""")).Item1);
        Assert.Equal(["too-many"],
            (await Faults($$"""{"sells":"retail","currency":"USD","fees":[{{string.Join(',', Enumerable.Repeat("{\"rate\":0.5}", 51))}}]}""")).Item2);

        // Inline the same, from the request's root.
        var inline = (await studio.Post("/v1/floor-prices",
            $$"""{"profile":{{Sample.SmallProfile}},"design":{"making":{"piecesPerDay":4} },"channels":[{"sells":"retail","currency":"USD","fees":[{"name":"{{new string('f', 201)}}","rate":1}]}]}"""))
            .IsProblem(422, "invalid-input");
        Assert.Equal(["#/channels/0/fees", "#/channels/0/fees/0/name"], inline.Pointers);
    }

    [Theory]
    [InlineData("price=1,000", 422, "not-a-number")]
    [InlineData("price=0,35", 422, "not-a-number")]
    [InlineData("price=1e3", 422, "exponent")]
    [InlineData("price=0", 422, "out-of-range")]
    [InlineData("price=-1", 422, "out-of-range")]
    [InlineData("price=", 422, "required")]
    [InlineData("price=1&price=2", 400, "duplicate-parameter")]
    [InlineData("price=1&prise=2", 400, "unknown-parameter")]
    [InlineData("price=1&workings=yes", 422, "not-one-of")]
    [InlineData("price=1&asOf=2027-01-01", 422, "not-a-time")]
    public async Task Queries_are_read_as_strictly_as_bodies(string query, int status, string code)
    {
        var studio = shared.Of("Production");
        await studio.HasASmallShop();
        var answer = await studio.Get($"/v1/price-checks?sku=RB-014&channel=web&{query}");
        Assert.Equal([code], answer.IsProblem(status, status == 400 ? "unreadable-request" : "invalid-input").Codes);
    }

    [Fact]
    public async Task Everything_that_a_query_lacks_is_reported_at_once()
    {
        await using var studio = new Studio();
        Assert.Equal(["channel", "price", "sku"], (await studio.Get("/v1/price-checks")).IsProblem(422, "invalid-input").Pointers);
    }

    private async Task IsRefused(string path, string body, string pointer, string code)
    {
        var studio = shared.Of("Production");
        await studio.Has("/v1/profiles/main",
            """{"currency":"USD","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},"materials":[{"material":"rod","price":1}]}""");
        var answer = (await studio.Put(path, body)).IsProblem(422, "invalid-input");
        Assert.Contains((pointer, code), answer.Pointers.Zip(answer.Codes));
        (await studio.Get(path)).IsProblem(404, "not-found");
    }
}
