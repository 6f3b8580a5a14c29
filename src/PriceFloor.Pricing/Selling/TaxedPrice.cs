using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>A price before tax and what the buyer pays: 100.00 and 120.00 at 20 %.</summary>
public sealed record TaxedPrice(decimal BeforeTax, decimal WithTax)
{
    public static Outcome<TaxedPrice> Of(decimal beforeTax, SalesTax tax) =>
        Outcome<TaxedPrice>.Guard(() => new TaxedPrice(beforeTax, SalesTaxFormulas<Figure>.WithTax(beforeTax, tax).Value));
}
