namespace PriceFloor.Pricing.Years;

/// <summary>What a part of the required revenue is for.</summary>
public enum RevenuePartOf
{
    /// <summary>Expenses of one kind, with depreciation and the business shares of household lines.</summary>
    Expenses,

    /// <summary>What must be left after tax for the household, and expenses that are not deductible.</summary>
    Household,

    /// <summary>The tax on the profit.</summary>
    Tax,

    /// <summary>What other taxable income pays of it; below 0.</summary>
    OtherIncome,
}
