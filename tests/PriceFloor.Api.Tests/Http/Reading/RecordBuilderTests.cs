using System.Text;
using PriceFloor.Api.Designs;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using Xunit;

namespace PriceFloor.Api.Tests.Http.Reading;

/// <summary>A document put together value by value is the one that its JSON text would make, with the same faults.</summary>
public sealed class RecordBuilderTests
{
    private static readonly Design s_stored = new()
    {
        Name = "D",
        Profile = "main",
        Aliases = ["R"],
        Making = new Making { PiecesPerDay = 4, GoodShare = 0.9m },
        Seconds = new Seconds { Share = 0.5m, Price = 8 },
    };

    public static TheoryData<string, (string Path, object? Value)[], string> Laid => new()
    {
        { "nothing", [],
            """{"name":"D","profile":"main","aliases":["R"],"making":{"piecesPerDay":4,"goodShare":0.9},"seconds":{"share":0.5,"price":8}}""" },
        { "a value in place of another", [("making/piecesPerDay", 5m)],
            """{"name":"D","profile":"main","aliases":["R"],"making":{"piecesPerDay":5,"goodShare":0.9},"seconds":{"share":0.5,"price":8}}""" },
        { "what is taken away is as if it had been left out", [("name", null), ("aliases", null), ("making/goodShare", null)],
            """{"profile":"main","making":{"piecesPerDay":4},"seconds":{"share":0.5,"price":8}}""" },
        { "an optional object that is emptied goes", [("seconds/share", null), ("seconds/price", null)],
            """{"name":"D","profile":"main","aliases":["R"],"making":{"piecesPerDay":4,"goodShare":0.9}}""" },
        { "a required number in an object is missed", [("seconds/price", null)],
            """{"name":"D","profile":"main","aliases":["R"],"making":{"piecesPerDay":4,"goodShare":0.9},"seconds":{"share":0.5}}""" },
        { "a required object that is emptied stays", [("making/piecesPerDay", null), ("making/goodShare", null), ("making/setupMinutes", null)],
            """{"name":"D","profile":"main","aliases":["R"],"making":{},"seconds":{"share":0.5,"price":8}}""" },
        { "values out of range", [("making/piecesPerDay", 0m), ("soldShare", 2m), ("profile", "")],
            """{"name":"D","profile":"","aliases":["R"],"making":{"piecesPerDay":0,"goodShare":0.9},"seconds":{"share":0.5,"price":8},"soldShare":2}""" },
    };

    [Theory]
    [MemberData(nameof(Laid))]
    public void A_record_laid_over_another_is_what_its_text_would_be(string what, (string Path, object? Value)[] values, string text)
    {
        var design = new RecordBuilder<Design>(s_stored);
        foreach (var (path, value) in values)
            design.Set(path.Split('/'), value);
        AssertSame(what, text, design);
    }

    [Fact]
    public void A_new_record_misses_what_its_text_would_miss() =>
        AssertSame("new", """{"soldShare":0.5}""", Built(design => design.Set(["soldShare"], 0.5m)));

    [Theory]
    [InlineData("""[{"name":"Pull","handsOnMinutes":4}]""")]
    [InlineData("""[{"handsOnMinutes":-4},{"name":"Pull","handsOnMinutes":0.12345678}]""")]
    [InlineData("""[{"name":"Pull"}]""")]
    [InlineData("""[{"name":"Pull","hands":4}]""")]
    [InlineData("[null]")]
    [InlineData("[]")]
    public void A_value_that_comes_as_JSON_is_read_at_its_place(string steps) =>
        AssertSame(steps, $$"""{"profile":"main","making":{"steps":{{steps}}},"soldShare":2}""", Built(design =>
        {
            design.Set(["profile"], "main");
            design.SetJson(["making", "steps"], Encoding.UTF8.GetBytes(steps));
            design.Set(["soldShare"], 2m);
        }));

    private static RecordBuilder<Design> Built(Action<RecordBuilder<Design>> build)
    {
        var design = new RecordBuilder<Design>(null);
        build(design);
        return design;
    }

    private static void AssertSame(string what, string text, RecordBuilder<Design> design)
    {
        var (sent, built) = (JsonBody<Design>.Read(Encoding.UTF8.GetBytes(text), new DesignValidator()), design.Read(new DesignValidator()));
        Assert.Equal((what, TextOf(sent)), (what, TextOf(built)));
        Assert.Equal(Faults(sent), Faults(built));
    }

    private static string? TextOf(Outcome<Design> read) =>
        read.Found is { } design ? WireJson.WriteDocument(design, Currency.Of("USD")) : null;

    /// <summary>Line and column are those of a text that a record does not have.</summary>
    private static IEnumerable<string> Faults(Outcome<Design> read) => read.Faults.Cast<RequestFault>()
        .Select(fault => $"{fault.Type.Slug} {fault.Error!.Pointer} {fault.Error.Code} {fault.Error.Detail}").Order();
}
