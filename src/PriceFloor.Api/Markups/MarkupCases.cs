using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Markups;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class MarkupCases
{
    /// <summary>Two figures give the rest; chains both ways; tax; discounts.</summary>
    public static readonly IReadOnlyList<MainCase> Markups =
    [
        new("back-from-retail", "From the buyer's price back to the maker's.", Examples.Chain, Examples.ChainAnswer),
        new("from-wholesale-to-retail", "From the maker's price to the buyer's, through a distributor and a shop that doubles.",
            """{"currency":"USD","cost":60.00,"chain":[{"name":"distributor","markup":0.2},{"name":"shop","multiple":2}]}""", """
            {"cost":60.00,"price":144.00,"markup":1.4,"margin":0.583333,"profit":84.00,"chain":[{"name":"distributor","cost":60.00,"price":72.00,"markup":0.2,"margin":0.166667,"profit":12.00},{"name":"shop","cost":72.00,"price":144.00,"markup":1,"margin":0.5,"profit":72.00}]}
            """),
        new("two-of-five", "A cost and a margin give the rest; with the workings, enough to redo it by hand.",
            """{"currency":"USD","cost":60.00,"margin":0.4}""", """
            {"cost":60.00,"price":100.00,"markup":0.666667,"margin":0.4,"profit":40.00,"workings":[{"symbol":"cost","label":"what is paid for it","formula":"60","value":60},{"symbol":"margin","label":"profit over price","formula":"0.4","value":0.4},{"symbol":"price","label":"what it sells for, before tax","formula":"cost / (1 - margin)","value":100},{"symbol":"profit","label":"price less cost","formula":"price - cost","value":40},{"symbol":"markup","label":"profit over cost","formula":"profit / cost","value":0.666666666667}]}
            """) { At = new Dictionary<string, string> { ["workings"] = "true" } },
        new("with-sales-tax", "A price that holds the tax: markup and margin are before it.",
            """{"currency":"USD","cost":60.00,"price":144.00,"salesTax":{"rate":0.2,"included":true}}""", """
            {"cost":60.00,"price":120.00,"markup":1,"margin":0.5,"profit":60.00,"priceWithTax":144.00}
            """),
        new("discounts", "A series of trade discounts and the single one that equals it.",
            """{"currency":"USD","discounts":{"list":140.00,"rates":[0.3,0.1]}}""", """
            {"discounts":{"list":140.00,"net":88.20,"discount":51.80,"factor":0.63,"single":0.37}}
            """),
    ];
}
