namespace PriceFloor.Api.Tests.Access;

/// <summary>The requests, by route. A new route gets its row in one of the parts.</summary>
internal static partial class ScopeRequests
{
    private const string Check = """{"sku":"RB-014","channel":"web","price":58}""",
        Innocent = """{"currency":"USD","calendar":{"weeksPerYear":40,"daysPerWeek":5,"hoursPerDay":8}}""";

    private const string Order = "\"channel\":\"web\",\"items\":[{\"sku\":\"RB-014\",\"pieces\":3}]";

    private const string SoldTwice = "date,sku,channel,pieces,price\n2027-01-01,RB-014,web,1,52.00\n2027-01-02,RB-014,web,1,52.00\n";

    private const string Lessons = "Date,Amount,Description\n2027-01-02,-17.00,Jasp payment\n2027-01-03,-19.00,Other payment\n";

    public static readonly Dictionary<string, ScopeRequest[]> ByRoute = new([.. ToDocuments, .. Questions, .. OfSheetsAndTheService]);
}
