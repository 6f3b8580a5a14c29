namespace PriceFloor.Pricing.Documents;

/// <summary>How long texts and lists in documents may be.</summary>
public static class Limits
{
    public const int NameLength = 200;
    public const int KeyLength = 64;

    /// <summary>What the key of a document looks like.</summary>
    public const string KeyPattern = "^[A-Za-z0-9._~:+-]{1,64}$";

    /// <summary>What an ISO 4217 code looks like; not every such text is one.</summary>
    public const string CurrencyPattern = "^[A-Z]{3}$";

    public const int AliasLength = 128;
    public const int Aliases = 200;
    public const int OrderTermsLength = 1000;
    public const int Lines = 500;
    public const int Steps = 100;
    public const int Levies = 20;
    public const int Bands = 50;
    public const int Fees = 50;
    public const int Seasons = 50;
    public const int Months = 12;

    /// <summary>A JSON Pointer to a line by its name, of which every character may be escaped.</summary>
    public const int PointerLength = 450;

    /// <summary>A price above this is no price: 10^12.</summary>
    public const decimal HighestPrice = 1_000_000_000_000m;

    /// <summary>The least bench time of a year, in hours.</summary>
    public const decimal LeastBenchHours = 0.01m;
}
