using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Quotes;

/// <summary>What a quote names, found.</summary>
/// <param name="Profile">The profile.</param>
/// <param name="Year">Its year.</param>
/// <param name="Channel">The channel, in the same currency.</param>
/// <param name="Designs">The design of each line, all of the profile.</param>
/// <param name="Pieces">What one piece of each takes.</param>
internal sealed record QuoteParts(Stored<CostProfile> Profile, StudioYear Year, Stored<Channel> Channel, IReadOnlyList<Stored<Design>> Designs,
    IReadOnlyList<UnitCost> Pieces)
{
    /// <summary>Designs of a quote's own that name no profile are of the quote's.</summary>
    public static IReadOnlyList<QuoteLine> WithProfile(IReadOnlyList<QuoteLine> lines, string profile) =>
        [.. lines.Select(line => line.Design.Document is { Profile: null } design
            ? line with { Design = new KeyOr<Design>(null, design with { Profile = profile }) }
            : line)];

    /// <summary>Finds everything; what is unknown is reported for all of it at once.</summary>
    public static Outcome<QuoteParts> Of(Catalogue catalogue, KeyOr<CostProfile> profile, KeyOr<Channel> channel, QuoteTerms terms,
        bool anyDecimals = false)
    {
        var unknown = new List<InputError>();
        var costs = Found(profile, catalogue.Profile, "profile", InputCodes.UnknownProfile, unknown);
        var sold = Found(channel, catalogue.Channel, "channel", InputCodes.UnknownChannel, unknown);
        var designs = terms.Lines.Select((line, i) => Found(line.Design, catalogue.Design,
            FormattableString.Invariant($"lines/{i}/design"), InputCodes.UnknownDesign, unknown)).ToList();
        if (unknown.Count > 0)
            return unknown.Select(error => (Fault)RequestFault.Unknown(error)).ToList();
        var currency = Currency.Of(sold!.Document.Currency);
        if (costs!.Document.Currency != currency.Code)
            return RequestFault.Of(ProblemTypes.CurrencyMismatch,
                $"The channel sells in {currency.Code} and the profile counts in {costs.Document.Currency}; nothing is ever converted.");
        var faults = FaultsOf(terms, costs, designs!, anyDecimals ? null : currency).ToList();
        if (faults.Count > 0)
            return faults;
        var year = catalogue.Year(costs);
        return year.Found is null ? year.Faults.ToList() : WithPieces(new QuoteParts(costs, year.Value, sold, designs!, []));
    }

    private static Outcome<QuoteParts> WithPieces(QuoteParts parts)
    {
        var pieces = parts.Designs.Select(design => UnitCost.Of(design.Document, parts.Year)).ToList();
        var faults = pieces.SelectMany((piece, i) => piece.Faults.Select(fault => AtLine(fault, i, parts.Designs[i]))).ToList();
        return faults.Count > 0 ? faults : parts with { Pieces = [.. pieces.Select(piece => piece.Value)] };
    }

    private static IEnumerable<Fault> FaultsOf(QuoteTerms terms, Stored<CostProfile> profile, List<Stored<Design>> designs, Currency? currency)
    {
        foreach (var (i, design) in designs.Index())
            if (profile.Revision is not null && design.Revision is not null && design.Document.Profile != profile.Key)
                yield return Invalid(QuoteRules.OtherProfile(i, design.Document.Profile, profile.Key));
        if (currency is not null && terms.Price is { } price && ChannelRules.TooFine(price, "price", currency) is { } detail)
            yield return Invalid(new Fault("/price", FaultCodes.TooManyDecimals, detail));
    }

    /// <summary>A stored design is not part of the document, so its faults are reported where the line names it.</summary>
    private static Fault AtLine(Fault fault, int line, Stored<Design> design)
    {
        var placed = fault with { Pointer = FormattableString.Invariant($"/lines/{line}/design{(design.Revision is null ? fault.Pointer : "")}") };
        return placed.Code == FaultCodes.UnknownMaterial ? RequestFault.Unknown(InputError.At(placed))
            : placed.Code == FaultCodes.TooLarge ? fault
            : Invalid(placed);
    }

    private static RequestFault Invalid(Fault fault) => RequestFault.Invalid(InputError.At(fault));

    private static Stored<T>? Found<T>(KeyOr<T> given, Func<string, Stored<T>?> find, string at, Code code, List<InputError> unknown) where T : class
    {
        if (given.Document is { } document)
            return Stored<T>.Inline(document);
        if (find(given.Key!) is { } stored)
            return stored;
        unknown.Add(new InputError
        {
            Pointer = "#/" + at,
            Code = code,
            Detail = $"There is no {code.Word["unknown-".Length..]} \"{given.Key}\"; store it first, send it inline, or correct the key "
                + "(case counts).",
        });
        return null;
    }
}
