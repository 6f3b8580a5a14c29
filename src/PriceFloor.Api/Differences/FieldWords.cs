using System.Reflection;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Differences;

/// <summary>
/// What fields are called when people speak of them. A field that is not listed is called by its own name in words; an empty text means that what it
/// belongs to says enough.
/// </summary>
internal static class FieldWords
{
    private static readonly Dictionary<(Type, string), string> s_fields = new()
    {
        [(typeof(CostProfile), nameof(CostProfile.Calendar))] = "",
        [(typeof(CostProfile), nameof(CostProfile.PriceRule))] = "",
        [(typeof(CostProfile), nameof(CostProfile.Pay))] = "wanted pay",
        [(typeof(CostProfile), nameof(CostProfile.SoldShare))] = "share that sells",
        [(typeof(StudioCalendar), nameof(StudioCalendar.WeeksPerYear))] = "weeks a year",
        [(typeof(StudioCalendar), nameof(StudioCalendar.DaysPerWeek))] = "days a week",
        [(typeof(StudioCalendar), nameof(StudioCalendar.HoursPerDay))] = "hours a day",
        [(typeof(StudioCalendar), nameof(StudioCalendar.BenchShare))] = "share of the day at the bench",
        [(typeof(StudioCalendar), nameof(StudioCalendar.SellingShare))] = "share of the day for selling",
        [(typeof(Helper), nameof(Helper.BenchHoursPerYear))] = "bench hours a year",
        [(typeof(OtherIncome), nameof(OtherIncome.DaysPerYear))] = "days a year",
        [(typeof(Equipment), nameof(Equipment.Salvage))] = "worth at the end",
        [(typeof(Equipment), nameof(Equipment.InService))] = "in use since",
        [(typeof(Equipment), nameof(Equipment.Depreciation))] = "",
        [(typeof(DepreciationRule), nameof(DepreciationRule.Method))] = "depreciation",
        [(typeof(DepreciationRule), nameof(DepreciationRule.LifeYears))] = "years of life",
        [(typeof(DepreciationRule), nameof(DepreciationRule.Rate))] = "depreciation rate",
        [(typeof(DepreciationRule), nameof(DepreciationRule.Percentages))] = "depreciation by year",
        [(typeof(ResourceLimit), nameof(ResourceLimit.LoadsPerYear))] = "loads a year",
        [(typeof(TaxRules), nameof(TaxRules.Kind))] = "",
        [(typeof(Design), nameof(Design.Making))] = "",
        [(typeof(Design), nameof(Design.SoldShare))] = "share that sells",
        [(typeof(Design), nameof(Design.Aliases))] = "other names",
        [(typeof(Making), nameof(Making.PiecesPerDay))] = "pieces a day",
        [(typeof(Making), nameof(Making.PiecesPerBenchDay))] = "pieces a bench day",
        [(typeof(Making), nameof(Making.MinutesPerPiece))] = "minutes a piece",
        [(typeof(Making), nameof(Making.GoodShare))] = "share that comes out good",
        [(typeof(Making), nameof(Making.SetupMinutes))] = "minutes to set up",
        [(typeof(Making), nameof(Making.RunSize))] = "pieces in a run",
        [(typeof(Step), nameof(Step.HandsOnMinutes))] = "minutes",
        [(typeof(Step), nameof(Step.BatchSize))] = "pieces together",
        [(typeof(Step), nameof(Step.GoodShare))] = "share that survives",
        [(typeof(Step), nameof(Step.Rework))] = "worked over",
        [(typeof(MaterialLine), nameof(MaterialLine.BatchSize))] = "pieces that share it",
        [(typeof(MaterialLine), nameof(MaterialLine.Amount))] = "",
        [(typeof(MaterialLine), nameof(MaterialLine.At))] = "used at",
        [(typeof(Channel), nameof(Channel.ShopShare))] = "the shop's share",
        [(typeof(Channel), nameof(Channel.LossShare))] = "share lost",
        [(typeof(Channel), nameof(Channel.Selling))] = "",
        [(typeof(Channel), nameof(Channel.PiecesPerOrder))] = "pieces in an order",
        [(typeof(Channel), nameof(Channel.CostPerPiece))] = "cost of each piece",
        [(typeof(Channel), nameof(Channel.OrderTerms))] = "terms",
        [(typeof(SellingTime), nameof(SellingTime.MinutesPerOrder))] = "minutes an order",
        [(typeof(SellingTime), nameof(SellingTime.MinutesPerPiece))] = "selling minutes a piece",
        [(typeof(SalesTax), nameof(SalesTax.Included))] = "in the price",
        [(typeof(Shipping), nameof(Shipping.ReturnCost))] = "cost of a return",
        [(typeof(Fee), nameof(Fee.Rate))] = "",
        [(typeof(Returns), nameof(Returns.Share))] = "",
        [(typeof(Returns), nameof(Returns.ResaleShare))] = "sold again",
        [(typeof(Stall), nameof(Stall.TimesAYear))] = "times a year",
        [(typeof(ListedPrice), nameof(ListedPrice.Price))] = "",
    };

    /// <summary>What an item of a list is called before its name. A step needs no word before it: "torch minutes 34 to 38".</summary>
    private static readonly Dictionary<Type, string> s_nouns = new()
    {
        [typeof(Expense)] = "expense",
        [typeof(HouseholdLine)] = "household",
        [typeof(OtherIncome)] = "other income",
        [typeof(Equipment)] = "equipment",
        [typeof(Helper)] = "helper",
        [typeof(StockMaterial)] = "material",
        [typeof(ResourceLimit)] = "limit",
        [typeof(MaterialLine)] = "material",
        [typeof(Step)] = "",
        [typeof(Band)] = "band",
    };

    /// <summary>The fields that name an item of a list, the first that is given.</summary>
    private static readonly string[] s_names = ["Name", "Material", "Alias", "Key", "Sku", "UpTo"];

    private static readonly HashSet<Type> s_alone =
    [
        typeof(Expense), typeof(HouseholdLine), typeof(OtherIncome), typeof(Equipment), typeof(Helper), typeof(StockMaterial),
        typeof(ResourceLimit),
    ];

    public static string Of(PropertyInfo property) =>
        s_fields.TryGetValue((property.DeclaringType!, property.Name), out var words) ? words : KebabWords.Spoken(property.Name);

    /// <summary>Whether an item of this type is known by its name alone.</summary>
    public static bool StandsAlone(Type item) => s_alone.Contains(item);

    public static bool IsName(PropertyInfo property) => s_names.Contains(property.Name);

    /// <summary>An item's noun and name.</summary>
    public static string NameOf(Type type, object item, ValueWords values)
    {
        var noun = s_nouns.TryGetValue(type, out var known) ? known : KebabWords.Spoken(type.Name);
        var named = s_names.Select(type.GetProperty).OfType<PropertyInfo>().Select(property => (property, Value: property.GetValue(item)))
            .FirstOrDefault(one => one.Value is not null);
        var name = named.Value is string text ? text
            : named.Value is not null ? $"up to {values.Of(named.property, named.Value)}"
            : type == typeof(Band) ? "for the rest"
            : "without a name";
        return noun.Length > 0 ? $"{noun} {name}" : named.Value is null ? $"{KebabWords.Spoken(type.Name)} {name}" : name;
    }

}
