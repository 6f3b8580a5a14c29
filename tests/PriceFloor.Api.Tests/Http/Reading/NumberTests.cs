using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using Xunit;

namespace PriceFloor.Api.Tests.Http.Reading;

/// <summary>Numbers are read as text, exactly or not at all, in bodies as in queries.</summary>
public sealed class NumberTests(SharedStudio shared) : IClassFixture<SharedStudio>
{
    [Theory]
    [InlineData("12.5", "12.50")]
    [InlineData("\"12.5\"", "12.50")]
    [InlineData("12.500000000000000000000000", "12.50")]
    [InlineData("\"0012.5\"", "12.50")]
    [InlineData("0.000001", "0.000001")]
    [InlineData("-0", "0.00")]
    [InlineData("-0.0", "0.00")]
    [InlineData("1000000000000", "1000000000000.00")]
    [InlineData("999999999999.999999", "999999999999.999999")]
    [InlineData("0.1", "0.10")]
    public async Task Exactly_what_was_sent_is_stored(string sent, string stored)
    {
        var (studio, path) = (shared.Of("Production"), $"/v1/profiles/{Guid.NewGuid():N}");
        await studio.Has(path, Sample.SmallProfile.Replace("24000", sent, StringComparison.Ordinal));
        Assert.Contains($"\"amount\":{stored},", (await studio.Get(path)).Text, StringComparison.Ordinal);
        Assert.Equal("\"1\"", (await studio.Put(path, Sample.SmallProfile.Replace("24000", stored, StringComparison.Ordinal)))["ETag"]);
    }

    [Theory]
    [InlineData("1e3", "exponent")]
    [InlineData("1E-2", "exponent")]
    [InlineData("\"1e3\"", "exponent")]
    [InlineData("\"1,000\"", "not-a-number")]
    [InlineData("\"1.000,00\"", "not-a-number")]
    [InlineData("\"1 000\"", "not-a-number")]
    [InlineData("\" 1\"", "not-a-number")]
    [InlineData("\"+1\"", "not-a-number")]
    [InlineData("\"1.\"", "not-a-number")]
    [InlineData("\".5\"", "not-a-number")]
    [InlineData("\"\"", "not-a-number")]
    [InlineData("\"-\"", "not-a-number")]
    [InlineData("\"--1\"", "not-a-number")]
    [InlineData("\"1-\"", "not-a-number")]
    [InlineData("\"0x10\"", "not-a-number")]
    [InlineData("\"1_000\"", "not-a-number")]
    [InlineData("\"NaN\"", "not-a-number")]
    [InlineData("\"Infinity\"", "not-a-number")]
    [InlineData("\"\u0663\"", "not-a-number")]
    [InlineData("\"\uff15\"", "not-a-number")]
    [InlineData("\"(5)\"", "not-a-number")]
    [InlineData("\"$5\"", "not-a-number")]
    [InlineData("1.0000001", "too-many-decimals")]
    [InlineData("12345678901234567890123456789", "too-many-digits")]
    [InlineData("0.1234567890123456789", "too-many-digits")]
    [InlineData("1000000000000.000001", "too-many-digits")]
    [InlineData("1000000000001", "out-of-range")]
    [InlineData("-0.01", "out-of-range")]
    public async Task What_is_not_exact_is_refused_on_its_text(string sent, string code)
    {
        var studio = shared.Of("Production");
        var answer = (await studio.Put("/v1/profiles/new", Sample.SmallProfile.Replace("24000", sent, StringComparison.Ordinal)))
            .IsProblem(422, "invalid-input");
        Assert.Equal((code, "#/expenses/0/amount"), (Assert.Single(answer.Codes), Assert.Single(answer.Pointers)));
        (await studio.Get("/v1/profiles/new")).IsProblem(404, "not-found");
    }

    [Theory]
    [InlineData("01")]
    [InlineData("1.")]
    [InlineData(".5")]
    [InlineData("+1")]
    [InlineData("0x10")]
    [InlineData("NaN")]
    [InlineData("-Infinity")]
    [InlineData("1,000")]
    public async Task An_invalid_JSON_number_makes_the_body_unreadable(string sent) =>
        (await shared.Of("Production").Put("/v1/profiles/new", Sample.SmallProfile.Replace("24000", sent, StringComparison.Ordinal)))
            .IsProblem(400, "unreadable-request");

    [Theory]
    [InlineData("\"soldShare\":0.12345678", 201)]
    [InlineData("\"soldShare\":0.123456789", 422)]
    [InlineData("\"soldShare\":0.0001", 201)]
    [InlineData("\"soldShare\":0.00009999", 422)]
    [InlineData("\"soldShare\":1", 201)]
    [InlineData("\"soldShare\":1.00000001", 422)]
    [InlineData("\"helpers\":[{\"benchHoursPerYear\":1000000}]", 201)]
    [InlineData("\"helpers\":[{\"benchHoursPerYear\":1000000.000001}]", 422)]
    [InlineData("\"priceRule\":{\"retailMultiple\":0}", 422)]
    [InlineData("\"priceRule\":{\"retailMultiple\":0.000001}", 201)]
    public async Task A_bound_belongs_to_what_is_allowed_unless_it_is_above_nothing(string field, int status)
    {
        Assert.Equal(status,
            (await shared.Of("Production").Put($"/v1/profiles/{Guid.NewGuid():N}", Sample.SmallProfile[..^1] + "," + field + "}")).Status);
    }

    [Theory]
    [InlineData("0.65,\"benchShare\":0.5", "52", 201)]
    [InlineData("24", "52", 201)]
    [InlineData("24.01", "52", 422)]
    [InlineData("0", "50", 422)]
    [InlineData("8", "52.000001", 422)]
    public async Task A_year_has_52_weeks_and_a_day_24_hours(string hours, string weeks, int status)
    {
        Assert.Equal(status, (await shared.Of("Production").Put($"/v1/profiles/{Guid.NewGuid():N}",
            Sample.SmallProfile.Replace("\"hoursPerDay\":8", "\"hoursPerDay\":" + hours, StringComparison.Ordinal)
                .Replace("\"weeksPerYear\":50", "\"weeksPerYear\":" + weeks, StringComparison.Ordinal))).Status);
    }

    [Theory]
    [InlineData("JPY", "6000.0", 200)]
    [InlineData("JPY", "6000.1", 422)]
    [InlineData("USD", "6000.010", 200)]
    [InlineData("USD", "6000.001", 422)]
    [InlineData("KWD", "6000.001", 200)]
    [InlineData("KWD", "6000.0001", 422)]
    public async Task A_price_has_its_currencys_decimals_in_body_and_query(string currency, string price, int status)
    {
        var studio = shared.Of("Production");
        await studio.Has($"/v1/profiles/{currency}", Sample.SmallProfile.Replace("USD", currency, StringComparison.Ordinal));
        await studio.Has($"/v1/designs/{currency}", Sample.Pendant.Replace("main", currency, StringComparison.Ordinal));
        await studio.Has($"/v1/channels/{currency}", $$"""{"sells":"retail","currency":"{{currency}}"}""");
        Assert.Equal(status, (await studio.Get($"/v1/price-checks?sku={currency}&channel={currency}&price={price}")).Status);
        Assert.Equal(status,
            (await studio.Post("/v1/price-checks", $$"""{"sku":"{{currency}}","channel":"{{currency}}","price":{{price}}}""")).Status);
        Assert.Equal(status == 200 ? 201 : status,
            (await studio.Put($"/v1/designs/{currency}/prices/{currency}", $$"""{"price":{{price}}}""")).Status);
    }

    /// <summary>The reference is the framework's own reading, without the zeros that need not be written.</summary>
    [Fact]
    public void A_number_is_what_the_framework_reads_without_its_last_zeros()
    {
        var random = new Random(20261126);
        for (var i = 0; i < 20_000; i++)
        {
            var (whole, fraction) = (random.Next(1, 11), random.Next(0, 8));
            var text = (random.Next(4) == 0 ? "-" : "") + Digits(whole)
                + (fraction == 0 ? "" : "." + Digits(fraction) + new string('0', random.Next(4)));
            var expected = decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture) / 1.0000000000000000000000000000m;
            var (value, code, _) = NumberText.Read(text, "", null);
            Assert.Null(code);
            Assert.Equal(decimal.GetBits(expected == 0 ? 0 : expected), decimal.GetBits(value));
        }

        string Digits(int count) => string.Concat(Enumerable.Range(0, count).Select(_ => random.Next(3) == 0 ? 0 : random.Next(10)));
    }
}
