using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Quotes;
using PriceFloor.Api.Scenarios;

namespace PriceFloor.Api.Sureness;

/// <summary>A quote in every draw: what its price leaves above the floor of the work.</summary>
internal sealed class DrawnQuote
{
    private readonly ChangeScope _scope;
    private readonly QuoteParts _parts;
    private readonly string _key;
    private readonly Quote _quote;

    private DrawnQuote(ChangeScope scope, QuoteParts parts, string key, Quote quote) => (_scope, _parts, _key, _quote) = (scope, parts, key, quote);

    /// <summary>The quote of a question, which has an answer at the likely values; else why it has none.</summary>
    public static Outcome<DrawnQuote> Of(ChangeScope scope, ChangedDocuments likely)
    {
        var (key, stored) = (scope.Quote!.Key, scope.Quote.Document);
        if (stored.Price is null)
            return RequestFault.CannotCompute(FaultCodes.NoPrice, $"The quote \"{key}\" asks no price, so there is nothing to take or leave.");
        var catalogue = likely.All.Count == 0 ? scope.Catalogue : scope.Catalogue.Changed(likely.All);
        var figures = QuoteFigures.Of(catalogue, likely.Find<Quote>(Kinds.Quote, key) ?? stored, QuotedLearning.None, anyDecimals: true);
        return figures.Found is { } found ? new DrawnQuote(scope, found.Parts, key, stored) : figures.Faults.ToList();
    }

    /// <summary>net_order - F_order in a draw; null if it has no answer there.</summary>
    public decimal? GainIn(ChangedDocuments documents, StudioYear year)
    {
        var quote = documents.Find<Quote>(Kinds.Quote, _key) ?? _quote;
        var channel = documents.Find<Channel>(Kinds.Channel, _parts.Channel.Key) ?? _scope.Catalogue.Channel(_parts.Channel.Key)!.Document;
        var pieces = new List<UnitCost>(quote.Lines.Count);
        foreach (var line in quote.Lines)
        {
            var design = line.Design.Document ?? documents.Find<Design>(Kinds.Design, line.Design.Key!)
                ?? _scope.Catalogue.Design(line.Design.Key!)!.Document;
            if (UnitCost.Of(design, year).Found is not { } piece)
                return null;
            pieces.Add(piece);
        }

        return quote.Price is { } price && QuotedWork.Of(quote, pieces, year, channel).Found is { } work ? work.NetOf(price) - work.Floor : null;
    }
}
