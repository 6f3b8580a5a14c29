using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Explaining;

/// <summary>The defaults that lower a floor, so that a short document is never mistaken for a careful one.</summary>
public static class Assumed
{
    public static IEnumerable<Assumption> In(CostProfile profile)
    {
        if (profile.Calendar.BenchShare == 1)
            yield return new("/profile/calendar/benchShare", 1m);
        if (profile.Calendar.NormalUse == 1)
            yield return new("/profile/calendar/normalUse", 1m);
        if (profile.Tax.Kind == TaxKind.None)
            yield return new("/profile/tax", "none");
    }

    /// <summary>That every finished piece sells, unless something else is said.</summary>
    public static IEnumerable<Assumption> OfUnsoldPieces(CostProfile profile)
    {
        if (profile.SoldShare == 1)
            yield return new("/profile/soldShare", 1m);
    }

    public static IEnumerable<Assumption> In(UnitCost piece)
    {
        var design = piece.Design;
        foreach (var assumption in design.SoldShare is null ? OfUnsoldPieces(piece.Year.Profile) : [])
            yield return assumption;
        if (design.Making.Steps is null && design.Making.GoodShare == 1)
            yield return new("/design/making/goodShare", 1m);
        foreach (var (index, step) in (design.Making.Steps ?? []).Index())
            if (step.GoodShare == 1)
                yield return new($"/design/making/steps/{index}/goodShare", 1m);
        foreach (var (index, line) in design.Materials.Index())
            if (line.Material is not null && line.WasteShare == 0)
                yield return new($"/design/materials/{index}/wasteShare", 0m);
    }

    /// <param name="channel">The channel.</param>
    /// <param name="at">The channel's pointer, such as <c>/channel</c> or <c>/channels/0</c>.</param>
    public static IEnumerable<Assumption> In(Channel channel, string at)
    {
        if (channel.UsualDiscount == 0)
            yield return new($"{at}/usualDiscount", 0m);
        if (channel.LossShare == 0)
            yield return new($"{at}/lossShare", 0m);
        if (channel.SalesTax.Rate == 0)
            yield return new($"{at}/salesTax", 0m);
        if (channel.Returns.Share == 0)
            yield return new($"{at}/returns", 0m);
        if (!SellingTerms.TakesTime(channel))
            yield return new($"{at}/selling", 0m);
    }
}

/// <summary>A default that an answer leaned on and that lowers the floor.</summary>
/// <param name="Pointer">The pointer at which it can be given, below <c>/profile</c>, <c>/design</c> or the channel.</param>
/// <param name="Value">What was taken: a number or a word.</param>
public sealed record Assumption(string Pointer, object Value);
