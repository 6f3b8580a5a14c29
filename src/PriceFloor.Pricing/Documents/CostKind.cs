namespace PriceFloor.Pricing.Documents;

/// <summary>The kinds of cost a small business has, made from the lines of public self-employment tax forms.</summary>
public enum CostKind
{
    Advertising, CarAndTravel, CommissionsAndFees, ContractLabour, Depreciation, WagesAndBenefits, Insurance, InterestAndLoans,
    ProfessionalServices, Office, Rent, Repairs, Materials, Packaging, Supplies, TaxesAndLicences, Utilities, HomeWorkspace,
    Training, BadDebtsAndRefunds, BankCharges, Software, ShowsAndStalls, Shipping, Other,
}
