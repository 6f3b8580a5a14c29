using Xunit;

namespace PriceFloor.Api.Tests.QuickFloors;

public sealed class QuickFloorTests
{
    private const string Numbers =
        """{"currency":"USD","expensesPerYear":24000,"livingPerMonth":3000,"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8,"piecesPerDay":4,"taxRate":0.2}""";

    [Fact]
    public async Task The_documents_are_stored_as_they_come_and_give_the_same_floor()
    {
        await using var studio = new Studio();
        var first = (await studio.Post("/v1/quick-floor", Numbers)).Json;
        // 36,000 are left of 45,000 after 20 %: (24,000 + 45,000) / 50 / 5 / 4 = 69.00.
        Assert.Equal(("69.00", "138.00", "18.00"),
            (first.GetProperty("floor").GetRawText(), first.GetProperty("retail").GetRawText(), first.GetProperty("takeHomePerHour").GetRawText()));
        var documents = first.GetProperty("documents");
        Assert.Equal(201, (await studio.Put("/v1/profiles/main", documents.GetProperty("profile").GetRawText())).Status);
        Assert.Equal(201, (await studio.Put("/v1/designs/usual", documents.GetProperty("design").GetRawText())).Status);
        var stored = (await studio.Get("/v1/designs/usual/floor-price")).Json;
        Assert.Equal(("69.00", "1000"), (stored.GetProperty("floor").GetRawText(), stored.GetProperty("piecesPerYear").GetRawText()));
        Assert.Equal(first.GetProperty("assumed").GetRawText(), stored.GetProperty("assumed").GetRawText());
        // The stored documents are those in the answer: nothing was added afterwards.
        Assert.EndsWith(documents.GetProperty("profile").GetRawText()[1..], (await studio.Get("/v1/profiles/main")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nothing_is_stored_by_asking()
    {
        await using var studio = new Studio();
        Assert.Equal(200, (await studio.Post("/v1/quick-floor", Numbers)).Status);
        Assert.Equal("""{"items":[],"next":null}""", (await studio.Get("/v1/profiles")).Text);
    }

    [Fact]
    public async Task All_eight_are_needed_and_each_is_checked()
    {
        await using var studio = new Studio();
        Assert.Equal(8, (await studio.Post("/v1/quick-floor", "{}")).IsProblem(422, "invalid-input").Pointers.Count);
        var bad = await studio.Post("/v1/quick-floor",
            """{"currency":"usd","expensesPerYear":-1,"livingPerMonth":3000,"weeksPerYear":53,"daysPerWeek":5,"hoursPerDay":25,"piecesPerDay":0,"taxRate":1}""");
        Assert.Equal(["#/currency", "#/expensesPerYear", "#/hoursPerDay", "#/piecesPerDay", "#/taxRate", "#/weeksPerYear"],
            bad.IsProblem(422, "invalid-input").Pointers);
        var short_ = await studio.Post("/v1/quick-floor", Numbers.Replace("\"hoursPerDay\":8", "\"hoursPerDay\":0.00001", StringComparison.Ordinal));
        Assert.Equal(["no-bench-time"], short_.IsProblem(422, "invalid-input").Codes);
    }

    [Fact]
    public async Task The_year_is_that_of_the_asked_time()
    {
        await using var studio = new Studio();
        var answer = (await studio.Post("/v1/quick-floor?asOf=2025-06-01T00:00:00Z&workings=true", Numbers)).Json;
        Assert.Equal("2025-01-01", answer.GetProperty("documents").GetProperty("profile").GetProperty("yearStart").GetString());
        Assert.Contains(answer.GetProperty("workings").EnumerateArray(),
            line => line.GetProperty("symbol").GetString() == "floor" && line.GetProperty("value").GetDecimal() == 69);
    }
}
