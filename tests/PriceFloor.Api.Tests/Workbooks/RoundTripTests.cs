using System.Globalization;
using Xunit;

namespace PriceFloor.Api.Tests.Workbooks;

/// <summary>Studios of any content go into a workbook and come back as they were.</summary>
public sealed class RoundTripTests
{
    private static readonly string[] s_names =
        ["=1+1", "'=x", "''@", "-5", "+1", " spaces ", "quotes \"and\" <tags> & more", "_x0041_", "1e5", "007", "TRUE", "2027-01-02",
         "Äpfel, 燈", "a;b|c", "#REF!"];

    [Fact]
    public async Task Any_studio_comes_back_as_it_was()
    {
        var random = new Random(20270104);
        for (var studios = 0; studios < 6; studios++)
        {
            await using var studio = new Studio();
            await studio.Has("/v1/profiles/main", $$"""
                {"name":{{Name()}},"currency":"USD","calendar":{"weeksPerYear":{{random.Next(1, 53)}},"daysPerWeek":5,"hoursPerDay":8},
                "expenses":[{{string.Join(',', Enumerable.Range(0, random.Next(9)).Select(_ =>
                    $$"""{"name":{{Name()}},"amount":{{Number(6)}},"per":"year"}"""))}}],
                "household":[{{string.Join(',', Enumerable.Range(0, random.Next(9)).Select(_ =>
                    $$"""{"name":{{Name()}},"amount":{{Number(6)}},"per":"month","businessShare":0.{{random.Next(1, 99_999_999)}}}"""))}}]}
                """);
            for (var i = random.Next(6); i >= 0; i--)
            {
                var aliases = s_names[random.Next(s_names.Length)].Replace("\"", "\\\"", StringComparison.Ordinal) + i;
                await studio.Has($"/v1/designs/{(i == 0 ? "007" : $"D-{i}")}", $$"""
                    {"name":{{Name()}},"profile":"main","making":{{(i % 2 == 0 ? """{"piecesPerDay":3.000001}""" : Steps())}},
                    "aliases":["{{aliases}}"],
                    "materials":[{"name":{{Name()}},"amount":{{Number(6)}}}]}
                    """);
            }

            await studio.Has("/v1/channels/1",
                $$"""{"name":{{Name()}},"sells":"retail","currency":"USD","fees":[{"name":{{Name()}},"rate":0.02400001}]}""");
            await studio.Has("/v1/designs/007/prices/1", $$"""{"price":{{Number(2)}}}""");
            var (file, tag) = await studio.Workbook();
            var stored = await studio.Send(file);
            Assert.True(stored.Status == 200, stored.Text);
            Assert.All(stored.Json.GetProperty("items").EnumerateArray(),
                item => Assert.True(item.GetProperty("result").GetString() == "unchanged", item.GetRawText()));
            Assert.Equal(tag, (await studio.Workbook()).Tag);
        }

        string Name() => System.Text.Json.JsonSerializer.Serialize(s_names[random.Next(s_names.Length)]);

        string Number(int decimals) => // up to 18 digits: more than a spreadsheet's numbers have
            (random.NextInt64(1, random.Next(2) == 0 ? 1_000_000 : 999_999_999_999) + decimal.Round((decimal)random.NextDouble(), decimals))
            .ToString(CultureInfo.InvariantCulture);

        string Steps() =>
            $$"""{"steps":[{"name":{{Name()}},"handsOnMinutes":{{random.Next(1, 99)}},"goodShare":0.95},{"name":"x","handsOnMinutes":1}]}""";
    }

    [Fact]
    public async Task A_stored_sheet_of_the_demo_studio_comes_back_too()
    {
        await using var studio = await WorkedStudio.Create();
        foreach (var name in new[] { "profiles", "designs", "prices", "channels" })
        {
            var sheet = await studio.Get("/v1/sheets/" + name);
            var stored = await studio.SendBytes("PUT", "/v1/sheets/" + name, System.Text.Encoding.UTF8.GetBytes(sheet.Text), "text/csv");
            Assert.True(stored.Status == 200, stored.Text);
            Assert.All(stored.Json.GetProperty("items").EnumerateArray(), item => Assert.Equal("unchanged", item.GetProperty("result").GetString()));
        }
    }
}
