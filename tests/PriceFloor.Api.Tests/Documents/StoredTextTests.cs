using System.Text.RegularExpressions;
using Xunit;

namespace PriceFloor.Api.Tests.Documents;

/// <summary>The canonical text of each kind of document, pinned raw: defaults filled in, money padded, other numbers trimmed.</summary>
public sealed class StoredTextTests
{
    private const string Saved = "\"revision\":1,\"savedAt\":\"2027-01-02T09:00:00.000000Z\",\"";

    [Fact]
    public async Task A_profile_with_something_of_everything()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", """
            {"currency":"KWD","yearStart":"2027-04-06","calendar":{"weeksPerYear":"48.50","daysPerWeek":4.5,"hoursPerDay":"07.250","benchShare":0.65000000},
             "helpers":[{"benchHoursPerYear":120.0}],"expenses":[{"amount":"150.5","per":"time","times":8.0,"tracedTo":"sale"}],
             "equipment":[{"cost":3200,"depreciation":{"method":"percentages","percentages":[0.20,0.320]}}],"soldShare":0.950,
             "household":[],"otherIncome":[{"amount":0.0005,"per":"four-weeks","kind":"net"}],
             "tax":{"kind":"levies","levies":[{"bands":[{"upTo":1000,"rate":-0.0},{"rate":0.10}]}]},
             "materials":[{"material":"rod","price":38}],"limits":[{"name":"kiln","loadsPerYear":240}],"pay":{"amount":14,"per":"hour"},"priceRule":{"retailMultiple":2.50}}
            """);
        Assert.Equal("{\"key\":\"main\"," + Saved
            + """currency":"KWD","yearStart":"2027-04-06","calendar":{"weeksPerYear":48.5,"daysPerWeek":4.5,"hoursPerDay":7.25,"benchShare":0.65,"sellingShare":0,"normalUse":1},"helpers":[{"benchHoursPerYear":120}],"expenses":[{"amount":150.500,"per":"time","times":8,"tracedTo":"sale","deductible":true}],"equipment":[{"cost":3200.000,"salvage":0.000,"depreciation":{"method":"percentages","percentages":[0.2,0.32]}}],"pay":{"amount":14.000,"per":"hour"},"soldShare":0.95,"household":[],"otherIncome":[{"amount":0.0005,"per":"four-weeks","kind":"net","daysPerYear":0}],"tax":{"kind":"levies","levies":[{"share":1,"allowance":0.000,"otherBase":0.000,"deductibleShare":0,"bands":[{"upTo":1000.000,"rate":0},{"rate":0.1}]}]},"materials":[{"material":"rod","price":38.000}],"limits":[{"name":"kiln","loadsPerYear":240}],"priceRule":{"retailMultiple":2.5}}""",
            (await studio.Get("/v1/profiles/main")).Text);
    }

    [Fact]
    public async Task A_design_with_steps_and_one_without()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.Rich);
        await studio.Has("/v1/designs/RB-014",
            """{"profile":"main","making":{"steps":[{"name":"torch","handsOnMinutes":34.0},{"handsOnMinutes":"20","batchSize":24,"mayBeHurried":false}]},"materials":[{"material":"clear-rod","quantity":0.0620},{"amount":1.5,"at":"torch"}],"seconds":{"price":11}}""");
        Assert.Equal("{\"key\":\"RB-014\"," + Saved
            + """profile":"main","aliases":[],"making":{"steps":[{"name":"torch","handsOnMinutes":34,"batchSize":1,"goodShare":1,"mayBeHurried":true},{"handsOnMinutes":20,"batchSize":24,"goodShare":1,"mayBeHurried":false}],"goodShare":1,"setupMinutes":0},"materials":[{"material":"clear-rod","quantity":0.062,"wasteShare":0,"batchSize":1,"at":"start"},{"wasteShare":0,"batchSize":1,"amount":1.50,"at":"torch"}],"seconds":{"share":0,"price":11.00}}""",
            Settled(await studio.Get("/v1/designs/RB-014")));
        await studio.Has("/v1/designs/B", """{"profile":"main","making":{"piecesPerDay":4}}""");
        Assert.Equal(
            "{\"key\":\"B\"," + Saved + """profile":"main","aliases":[],"making":{"piecesPerDay":4,"goodShare":1,"setupMinutes":0},"materials":[]}""",
            Settled(await studio.Get("/v1/designs/B")));
    }

    /// <summary>The clock stands still, so each save is a microsecond after the one before.</summary>
    private static string Settled(Answer answer) =>
        Regex.Replace(answer.Text, "00[.]00000[0-9]Z", "00.000000Z", RegexOptions.None, TimeSpan.FromSeconds(5));

    [Theory]
    [InlineData("USD", "0.01", "0.00")]
    [InlineData("JPY", "1", "0")]
    [InlineData("KWD", "0.001", "0.000")]
    public async Task A_channel_with_nothing_but_what_it_must_say(string currency, string step, string zero)
    {
        await using var studio = new Studio();
        await studio.Has("/v1/channels/web", $$"""{"sells":"retail","currency":"{{currency}}"}""");
        Assert.Equal("{\"key\":\"web\"," + Saved + $$$"""
            sells":"retail","currency":"{{{currency}}}","shopShare":0,"usualDiscount":0,"lossShare":0,"selling":{"minutesPerOrder":0,"minutesPerPiece":0},"fees":[],"salesTax":{"rate":0,"included":false},"shipping":{"charged":{{{zero}}},"cost":{{{zero}}},"returnCost":{{{zero}}}},"piecesPerOrder":1,"costPerPiece":{{{zero}}},"returns":{"share":0,"resaleShare":0,"feesRefunded":false},"priceStep":{{{step}}},"priceEnding":{{{zero}}}}
            """.Trim(), (await studio.Get("/v1/channels/web")).Text);
    }

    [Theory]
    [InlineData("USD", "58", "58.00")]
    [InlineData("JPY", "12000.0", "12000")]
    [InlineData("KWD", "\"8\"", "8.000")]
    public async Task A_listed_price_says_its_currency(string currency, string sent, string stored)
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        await studio.Has("/v1/designs/RB-014", Sample.Pendant);
        await studio.Has("/v1/channels/web", $$"""{"sells":"retail","currency":"{{currency}}"}""");
        var price = await studio.Has("/v1/designs/RB-014/prices/web", $$"""{"price":{{sent}}}""");
        Assert.StartsWith("{\"sku\":\"RB-014\",\"channel\":\"web\",\"revision\":1,", price.Text, StringComparison.Ordinal);
        Assert.EndsWith($",\"price\":{stored},\"currency\":\"{currency}\"}}", price.Text, StringComparison.Ordinal);
        Assert.Equal("\"1\"", (await studio.Put("/v1/designs/RB-014/prices/web", $$"""{"currency":"{{currency}}","price":{{stored}}}"""))["ETag"]);
    }

    [Theory]
    [InlineData("\"key\":\"other\",\"revision\":99,\"savedAt\":\"never\"")]
    [InlineData("\"key\":null,\"revision\":{\"a\":[1,2]},\"savedAt\":[]")]
    public async Task What_is_read_only_is_ignored_whatever_it_says(string readOnly)
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        var answer = await studio.Put("/v1/profiles/main", Sample.SmallProfile[..^1] + "," + readOnly + "}");
        Assert.Equal((200, "\"1\"", "main"), (answer.Status, answer["ETag"], answer.Json.GetProperty("key").GetString()));
        (await studio.Put("/v1/channels/web", """{"sells":"retail","currency":"USD","sku":"x"}""")).IsProblem(400, "unreadable-request");
        (await studio.Put("/v1/profiles/main", Sample.SmallProfile[..^1] + ",\"key\":1,\"key\":2}")).IsProblem(400, "unreadable-request");
    }

    [Fact]
    public async Task Names_come_back_as_they_were_written()
    {
        await using var studio = new Studio();
        const string Name = "Gl\u00e4sernes <\"Tropfen\"> & \u65e5\u672c \ud83d\udd25 '\\'";
        await studio.Has("/v1/profiles/main", Sample.SmallProfile[..^1] + ",\"name\":" + System.Text.Json.JsonSerializer.Serialize(Name) + "}");
        var read = await studio.Get("/v1/profiles/main");
        Assert.Equal(Name, read.Json.GetProperty("name").GetString());
        Assert.Equal("\"1\"", (await studio.Put("/v1/profiles/main", read.Text))["ETag"]);
    }
}
