using System.Text;
using PriceFloor.Api.Tests.Conventions;
using Xunit;

namespace PriceFloor.Api.Tests.Statements;

/// <summary>Reading rules in a spreadsheet.</summary>
public sealed class ReadingRuleSheetTests
{
    [Fact]
    public async Task The_starter_rules_go_out_as_a_sheet_and_come_back_unchanged()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main",
            await File.ReadAllTextAsync(Repository.File("src/PriceFloor.Api/ReadingRuleSets/starter-rules.json"), Studio.Cancellation));
        foreach (var dialect in new[] { "", "?dialect=semicolon" })
        {
            var sheet = (await studio.Get("/v1/sheets/reading-rules" + dialect)).Text;
            Assert.StartsWith("rules,textHas,textMatches,paid,least,most,costKind,to,businessShare,tracedTo,incomeKind,timesAYear,name\r\n",
                sheet.Replace(';', ','), StringComparison.Ordinal);
            Assert.Equal("unchanged", (await Put(studio, sheet, dialect)).Json.GetProperty("items")[0].GetProperty("result").GetString());
        }
    }

    [Fact]
    public async Task A_sheet_of_three_columns_makes_a_set_of_rules_and_keeps_what_it_does_not_say()
    {
        await using var studio = new Studio();
        var made = await Put(studio, "rules,textHas,to\r\nmain,wren lane,household\r\nmain,glassway,business\r\n");
        Assert.Equal((200, "created"), (made.Status, made.Json.GetProperty("items")[0].GetProperty("result").GetString()));

        await studio.Has("/v1/reading-rules/main",
            """{"name":"Ours","rules":[{"textHas":"glassway","to":"business","costKind":"materials","tracedTo":"piece"}]}""");
        await Put(studio, "rules,textHas,to\r\nmain,wren lane,household\r\nmain,glassway,business\r\n");
        var now = (await studio.Get("/v1/reading-rules/main")).Text;
        Assert.Contains(
            """
            ,"name":"Ours","rules":[{"textHas":"wren lane","to":"household"},{"textHas":"glassway","costKind":"materials","to":"business","tracedTo":"piece"}]}
            """,
            now, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_fault_is_at_its_row_and_nothing_is_stored()
    {
        await using var studio = new Studio();
        var problem = (await Put(studio, "rules,textHas,textMatches,to\r\nmain,a,,household\r\nmain,,(a,sale\r\nmain,,,sale\r\n"))
            .IsProblem(422, "invalid-input");

        Assert.Equal([("bad-pattern", 3), ("required", 4)], problem.Json.GetProperty("errors").EnumerateArray()
            .Select(error => (error.GetProperty("code").GetString(), error.GetProperty("line").GetInt32())).OrderBy(error => error.Item2));
        (await studio.Get("/v1/reading-rules/main")).IsProblem(404, "not-found");
    }

    private static Task<Answer> Put(Studio studio, string sheet, string query = "") =>
        studio.SendBytes("PUT", "/v1/sheets/reading-rules" + query, Encoding.UTF8.GetBytes(sheet), "text/csv");
}
