using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>
/// The retail price that a maker suggests to shops. Nobody should be able to buy the piece cheaper from the maker, so it is the lowest price that the
/// maker lists at retail; for a piece that only shops buy, the studio's own multiple of what the shop pays before sales tax. With 58.00 in the own
/// shop and 60.00 at fairs: 58.00. With nothing listed at retail, 28.50 for the shop and a multiple of 2: 57.00. Common practice, without a
/// published source.
/// </summary>
public static class SuggestedRetail
{
    /// <summary>Rounded up to the currency's minor unit if it is a multiple; never fails within the limits of prices and multiples.</summary>
    /// <param name="listedAtRetail">What the maker lists on retail channels of this currency; may be empty.</param>
    /// <param name="shopPays">What the shop pays, as its channel lists it.</param>
    /// <param name="tax">The sales tax of the shop's channel.</param>
    /// <param name="multiple">Retail price over wholesale price, at least 1.</param>
    /// <param name="currency">The currency of all amounts.</param>
    public static decimal Of(IReadOnlyCollection<decimal> listedAtRetail, decimal shopPays, SalesTax tax, decimal multiple, Currency currency) =>
        listedAtRetail.Count > 0 ? listedAtRetail.Min()
        : currency.RoundUp(SalesTaxFormulas<Figure>.BeforeTax(shopPays, tax).Value * multiple);
}
