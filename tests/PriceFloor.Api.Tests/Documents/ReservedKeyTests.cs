using System.Text;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Access;
using PriceFloor.Storage;
using Xunit;

namespace PriceFloor.Api.Tests.Documents;

/// <summary>
/// Names that are already addresses, or that addresses drop: nothing new gets one, and documents that have one stay readable and can be deleted.
/// </summary>
public sealed class ReservedKeyTests
{
    [Theory]
    [InlineData("batch", "the address of batches")]
    [InlineData("Batch", "the address of batches")]
    public async Task No_kind_of_document_is_stored_as_batch(string key, string why)
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        foreach (var (path, body) in new[]
        {
            ("profiles", Sample.SmallProfile),
            ("designs", Sample.Pendant),
            ("channels", Sample.Shop),
            ("reading-rules", """{"rules":[]}"""),
            ("quotes", """{"profile":"main","channel":"web","extra":[{"hours":1}]}"""),
            ("statement-layouts", """{"dateColumn":"Booked"}"""),
            ("plans", Sample.Plan),
            ("designs/RB-014/prices", """{"price":58}"""),
        })
        {
            var answer = (await studio.Put($"/v1/{path}/{key}", body)).IsProblem(422, "invalid-input");
            Assert.Equal((path, "bad-key"), (path, Assert.Single(answer.Codes)));
            Assert.Contains($"\"{key}\"", answer.Text.Replace("\\\"", "\"", StringComparison.Ordinal), StringComparison.Ordinal);
            Assert.Contains(why, answer.Text, StringComparison.Ordinal);
            Assert.Contains("choose another key", answer.Text, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("batch")]
    [InlineData("BATCH")]
    [InlineData(".")]
    [InlineData("..")]
    public async Task No_design_of_a_batch_is_stored_so_in_any_format(string key)
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        foreach (var (type, body) in new[]
        {
            ("application/json", $"[{Json(key)}]"),
            ("application/x-ndjson", Json(key)),
            ("text/csv", $"sku,profile,piecesPerDay\r\n{key},main,4\r\n"),
        })
        {
            var answer = (await studio.SendBytes("POST", "/v1/designs/batch", Encoding.UTF8.GetBytes(body), type)).IsProblem(422, "invalid-input");
            Assert.Equal((type, "bad-key"), (type, Assert.Single(answer.Codes)));
            Assert.Contains("choose another key", answer.Text, StringComparison.Ordinal);
        }

        Assert.Single((await studio.Get("/v1/designs")).Json.GetProperty("items").EnumerateArray());
    }

    [Fact]
    public async Task What_an_earlier_program_stored_so_is_read_and_deleted()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var body = await studio.Get("/v1/designs/RB-014");
        studio.Services.GetRequiredService<Store>()
            .Write("an earlier program", writing => writing.Save("design", "batch", """{"profile":"main","making":{"piecesPerDay":4}}""", []));
        Assert.Equal(200, (await studio.Get("/v1/designs/batch")).Status);
        Assert.Equal(200, (await studio.Get("/v1/designs/batch/floor-price")).Status);
        Assert.Equal(200, (await studio.Get("/v1/designs/batch/revisions")).Status);
        Assert.Equal(204, (await studio.Delete("/v1/designs/batch")).Status);
        (await studio.Get("/v1/designs/batch")).IsProblem(404, "not-found");
        Assert.Equal(body.Text, (await studio.Get("/v1/designs/RB-014")).Text);
    }

    private static string Json(string key) => $"{{\"key\":\"{key}\",{Sample.Pendant[1..]}";
}
