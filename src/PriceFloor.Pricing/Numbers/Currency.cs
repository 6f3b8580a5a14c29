using System.Collections.Frozen;

namespace PriceFloor.Pricing.Numbers;

/// <summary>An ISO 4217 currency and how many decimals its amounts have (its minor unit).</summary>
/// <param name="Code">Three capital letters.</param>
/// <param name="Decimals">Decimals of the minor unit: 2 for USD, 0 for JPY, 3 for KWD.</param>
public sealed record Currency(string Code, int Decimals)
{
    // ISO 4217 list one. Codes without a minor unit (metals, funds, testing) cannot carry a price and are left out.
    private const string TwoDecimals =
        "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF CHE CHF CHW CNY COP COU " +
        "CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES " +
        "KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN NIO NOK NPR " +
        "NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP " +
        "TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST XAD XCD XCG YER ZAR ZMW ZWG";

    private const string NoDecimals = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF";

    private const string ThreeDecimals = "BHD IQD JOD KWD LYD OMR TND";

    private const string FourDecimals = "CLF UYW";

    private static readonly FrozenDictionary<string, Currency> s_all = Listed(TwoDecimals, 2)
        .Concat(Listed(NoDecimals, 0)).Concat(Listed(ThreeDecimals, 3)).Concat(Listed(FourDecimals, 4))
        .ToFrozenDictionary(currency => currency.Code);

    public static IEnumerable<Currency> All => s_all.Values;

    /// <summary>The currency of that code, or null if ISO 4217 has none with a minor unit.</summary>
    public static Currency? Find(string code) => s_all.GetValueOrDefault(code);

    /// <summary>The currency of a code that a validator has let through.</summary>
    public static Currency Of(string code) => s_all[code];

    /// <summary>One cent, one yen, one fils.</summary>
    public decimal MinorUnit => new(1, 0, 0, isNegative: false, (byte)Decimals);

    /// <summary>Money that must at least be there, rounded up.</summary>
    public decimal RoundUp(decimal amount) => Rounding.Up(amount, Decimals);

    /// <summary>Money that may at most be spent, rounded down.</summary>
    public decimal RoundDown(decimal amount) => Rounding.Down(amount, Decimals);

    /// <summary>Any other money, to the nearest.</summary>
    public decimal Round(decimal amount) => Rounding.Nearest(amount, Decimals);

    /// <summary>Parts to the nearest that still add up to a whole: three thirds of 1.00 are 0.33, 0.33 and 0.34.</summary>
    public IReadOnlyList<decimal> NearestTogether(IReadOnlyList<decimal> parts, decimal whole) => Rounding.NearestTogether(parts, whole, Decimals);

    private static IEnumerable<Currency> Listed(string codes, int decimals) =>
        codes.Split(' ').Select(code => new Currency(code, decimals));
}
