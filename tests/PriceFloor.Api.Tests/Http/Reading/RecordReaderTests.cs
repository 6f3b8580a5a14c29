using System.Text;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using Xunit;

namespace PriceFloor.Api.Tests.Http.Reading;

/// <summary>A document that the service makes itself follows the same rules, with the same messages, as one in a request.</summary>
public sealed class RecordReaderTests
{
    private static readonly Expense s_rent = new() { Name = "Bench rent", Amount = 500, Per = Per.Month };

    private static readonly CostProfile s_profile = new()
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 46, DaysPerWeek = 5, HoursPerDay = 7.5m },
        Expenses = [s_rent],
        Household = [new HouseholdLine { Amount = 2_800, Per = Per.Month }],
        Tax = new TaxRules { Kind = TaxKind.Flat, Rate = 0.22m },
    };

    public static TheoryData<string, CostProfile, string> Spoilt => new()
    {
        { "a name past its length", s_profile with { Name = new string('n', Limits.NameLength + 1) }, "#/name: too-long" },
        { "a name with a control character", s_profile with { Name = "a\u0007b" }, "#/name: control-character" },
        { "an empty currency", s_profile with { Currency = "" }, "#/currency: required" },
        { "weeks past a year's", s_profile with { Calendar = s_profile.Calendar with { WeeksPerYear = 54 } },
            "#/calendar/weeksPerYear: out-of-range" },
        { "a negative amount in a line", s_profile with { Expenses = [s_rent, s_rent with { Amount = -1 }] }, "#/expenses/1/amount: out-of-range" },
        { "an amount finer than money", s_profile with { Expenses = [s_rent with { Amount = 0.1234567m }] },
            "#/expenses/0/amount: too-many-decimals" },
        { "more lines than a list takes", s_profile with { Expenses = [.. Enumerable.Repeat(s_rent with { Amount = -1 }, Limits.Lines + 1)] },
            "#/expenses: too-many" },
        { "two faults at once", s_profile with { SoldShare = 2, Expenses = [s_rent with { Amount = -1 }] },
            "#/expenses/0/amount: out-of-range, #/soldShare: out-of-range" },
    };

    [Theory]
    [MemberData(nameof(Spoilt))]
    public void A_record_has_the_faults_that_its_text_would_have(string what, CostProfile profile, string expected)
    {
        var faults = RecordReader.Check(profile);
        Assert.True(expected == Text(faults), $"{what}: {Text(faults)}");
        var sent = BodyReader.Check(Encoding.UTF8.GetBytes(WireJson.WriteDocument(profile, Currency.Of("USD"))), BodySchema.Of(typeof(CostProfile)));
        Assert.Equal(sent, faults);
    }

    [Fact]
    public void A_record_that_may_be_sent_has_none() => Assert.Empty(RecordReader.Check(s_profile));

    private static string Text(IEnumerable<InputError> faults) => string.Join(", ", faults.Select(fault => $"{fault.Pointer}: {fault.Code}"));
}
