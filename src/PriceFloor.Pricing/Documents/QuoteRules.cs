using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Documents;

/// <summary>The rules between the fields of a quote.</summary>
public static class QuoteRules
{
    /// <summary>Every rule that the document breaks. Missing required fields are reported elsewhere.</summary>
    public static IEnumerable<Fault> Faults(Quote quote) => Faults(quote, quote.Profile);

    /// <summary>The same of what a quote of a profile offers; without the profile's key its designs may name any.</summary>
    public static IEnumerable<Fault> Faults(QuoteTerms terms, string? profile) =>
        Faults(terms).Concat(profile is null ? [] : OtherProfiles(terms.Lines, profile));

    private static IEnumerable<Fault> Faults(QuoteTerms terms)
    {
        if (terms is { Lines.Count: 0, Extra.Count: 0, Bought.Count: 0 })
            yield return new("/lines", FaultCodes.Required,
                "There is nothing to quote for; give at least one line, extra hours or something bought.");
        foreach (var (index, line) in terms.Lines.Index())
            if (line.Design?.Document is { } design)
                foreach (var fault in DesignRules.Faults(design))
                    yield return fault with { Pointer = FormattableString.Invariant($"/lines/{index}/design{fault.Pointer}") };
        foreach (var (index, line) in terms.Lines.Index())
            if (line is { Learning: { Rate: null }, Design.Document: not null })
                yield return new(FormattableString.Invariant($"/lines/{index}/learning/rate"), FaultCodes.Required,
                    "rate is missing; only a stored design has a log that could fill it.");
        foreach (var (index, bought) in terms.Bought.Index())
            foreach (var fault in BoughtFaults(bought))
                yield return fault with { Pointer = FormattableString.Invariant($"/bought/{index}{fault.Pointer}") };
        if (terms.Deposit is null && terms.Payments.Count == 0)
            yield break;
        var paid = (terms.Deposit?.Share ?? 0) + terms.Payments.Sum(payment => payment.Share);
        if (paid != 1)
            yield return new(terms.Payments.Count > 0 ? "/payments" : "/deposit", FaultCodes.NotWhole, FormattableString.Invariant(
                $"The shares of deposit and payments are {Rounding.Trim(paid)} together; they must be 1 (0.4 and 0.6, say)."));
    }

    /// <summary>A design that comes with the quote may leave its profile out; it is the quote's.</summary>
    private static IEnumerable<Fault> OtherProfiles(IReadOnlyList<QuoteLine> lines, string profile) => lines.Index()
        .Where(line => line.Item.Design?.Document?.Profile is { } other && other != profile)
        .Select(line => OtherProfile(line.Index, line.Item.Design.Document!.Profile, profile, "/profile"));

    /// <summary>A line's design is of another profile than the quote.</summary>
    /// <param name="line">The line, from 0.</param>
    /// <param name="other">The design's profile.</param>
    /// <param name="profile">The quote's.</param>
    /// <param name="at">Where below the design it says so.</param>
    public static Fault OtherProfile(int line, string other, string profile, string at = "") =>
        new(FormattableString.Invariant($"/lines/{line}/design{at}"), FaultCodes.Contradictory,
            $"The design is of the profile \"{other}\" and the quote of \"{profile}\"; one quote is carried by one profile.");

    private static IEnumerable<Fault> BoughtFaults(QuoteBought bought)
    {
        if (bought.Amount is not null == (bought.Distance is not null || bought.Rate is not null))
            yield return new("", FaultCodes.ExactlyOne, "Give either an amount, or a distance with its rate.");
        else if (bought.Distance is null != bought.Rate is null)
            yield return new(bought.Rate is null ? "/rate" : "/distance", FaultCodes.Required, "distance and rate go together; give both.");
    }
}
