using System.Text;
using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.Http.Reading;

/// <summary>
/// Invalid text (bytes that are not UTF-8, half a surrogate pair), and how it is refused. <see cref="Contract.Fuzz.FuzzedTextTests"/> checks that it
/// is a fault of the service in no body and no address.
/// </summary>
public sealed class BrokenTextTests(SharedStudio shared) : IClassFixture<SharedStudio>
{
    private const string Json = "application/json", Lines = "application/x-ndjson", Sheet = "text/csv";

    [Theory]
    [InlineData("half a surrogate", "\\ud800")]
    [InlineData("the other half", "\\udfff")]
    [InlineData("a byte of Windows-1252", "\u0092")]
    public async Task A_key_that_is_not_text_is_refused_in_its_place(string what, string odd)
    {
        var studio = await AShop();
        var good = """[{"key":"B-1","profile":"main","making":{"piecesPerDay":4}},{"key":"B-@","profile":"main","making":{"piecesPerDay":4}}]""";
        var answer = await studio.SendBytes("POST", "/v1/designs/batch",
            Encoding.Latin1.GetBytes(good.Replace("@", odd, StringComparison.Ordinal)), Json);
        Assert.True(answer.Status is 400 or 422, $"{what}: {answer.Status} {answer.Text}");
        Assert.Equal(("malformed", "#/1"), (Assert.Single(answer.Codes), answer.Pointers[0][..3]));
        (await studio.Get("/v1/designs/B-1")).IsProblem(404, "not-found");
    }

    [Fact]
    public async Task A_surrogate_without_its_other_half_is_refused_everywhere_even_in_values_that_are_not_read()
    {
        var studio = await AShop();
        foreach (var member in new[]
        {
            "\"name\":\"\\ud800\"",
            "\"savedAt\":\"\\ud800\"",
            "\"savedAt\":[{\"a\":\"\\udc00\"}]",
            "\"savedAt\":{\"\\ud800\":1}",
        })
            Assert.Equal((member, "malformed"),
                (member, (await studio.Put("/v1/channels/web", $"{{{member},{Sample.Shop[1..]}")).IsProblem(400, "unreadable-request").Codes[0]));
        Assert.Equal(200, (await studio.Put("/v1/channels/web", $"{{\"savedAt\":\"\\ud83d\\udd25\",{Sample.Shop[1..]}")).Status);
    }

    [Fact]
    public async Task A_byte_order_mark_before_a_later_line_changes_nothing()
    {
        var studio = await AShop();
        var answer = await studio.SendBytes("POST", "/v1/designs/batch", Encoding.UTF8.GetBytes("{\"key\":\"C-1\",\"profile\":\"main\","
            + "\"making\":{\"piecesPerDay\":4}}\n\uFEFF{\"key\":\"C-2\",\"profile\":\"main\",\"making\":{\"piecesPerDay\":4}}\n"), Lines);
        Assert.Equal((200, 2), (answer.Status, answer.Json.GetProperty("items").GetArrayLength()));
    }

    [Fact]
    public async Task Lists_in_lists_in_a_cell_are_refused_however_deep()
    {
        var studio = await AShop();
        for (var depth = 28; depth <= 70; depth++)
            (await studio.SendBytes("POST", "/v1/designs/batch", Encoding.UTF8.GetBytes(
                $"sku,profile,steps\r\nA-1,main,{new string('[', depth)}{new string(']', depth)}\r\n"), Sheet)).IsProblem(422, "invalid-input");
    }

    private async Task<Studio> AShop()
    {
        var studio = shared.Of("Production");
        await studio.HasASmallShop();
        return studio;
    }
}
