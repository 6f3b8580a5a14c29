using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Quotes;

/// <summary>A page of the quotes, of one state if it is named.</summary>
public sealed record QuoteListQuery(ListQuery Page, QuoteState? State) : IQuery<QuoteListQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("state", "Only quotes in this state: draft, issued, accepted, declined, withdrawn, lapsed, superseded or done.", "string",
            Example: "issued"),
        QueryParameters.AsOf, QueryParameters.Limit, QueryParameters.After with { Example = "Q-2027-014" },
    ];

    public static QuoteListQuery Read(QueryValues values)
    {
        var state = values.EnumValue<QuoteState>("state");
        return new(ListQuery.Read(values), state);
    }
}
