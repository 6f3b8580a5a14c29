namespace PriceFloor.Pricing.Documents;

/// <summary>What a cost profile was drafted from.</summary>
public enum DraftSource
{
    /// <summary>Statements of accounts, which know neither the hours nor the tax.</summary>
    Statements,
}
