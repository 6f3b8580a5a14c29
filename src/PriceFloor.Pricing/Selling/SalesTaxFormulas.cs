using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>A price before tax and with it.</summary>
internal static class SalesTaxFormulas<T> where T : IFigure<T>
{
    /// <summary>What is left of a listed amount when the tax that is included in it is taken out.</summary>
    public static T BeforeTax(T listed, SalesTax? tax) => tax is { Included: true } ? listed / (1 + (T)tax.Rate) : listed;

    /// <summary>The listed amount of one before tax.</summary>
    public static T Listed(T beforeTax, SalesTax tax) => tax.Included ? WithTax(beforeTax, tax) : beforeTax;

    /// <summary>What the buyer pays.</summary>
    public static T WithTax(T beforeTax, SalesTax tax) => beforeTax * (1 + (T)tax.Rate);
}
