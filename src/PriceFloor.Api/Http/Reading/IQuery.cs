namespace PriceFloor.Api.Http.Reading;

/// <summary>The query of a call.</summary>
public interface IQuery<TSelf> where TSelf : IQuery<TSelf>
{
    static abstract IReadOnlyList<QueryParameter> Parameters { get; }

    static abstract TSelf Read(QueryValues values);
}

/// <summary>One query parameter, as the OpenAPI document describes it.</summary>
public sealed record QueryParameter(string Name, string Description, string Type, string? Format = null, string? Example = null,
    bool Required = false, decimal? Minimum = null, decimal? Maximum = null, string? Default = null);

/// <summary>The parameters that several calls share.</summary>
public static class QueryParameters
{
    public static readonly QueryParameter AsOf = new("asOf", "Answer as of this time; a time with its offset.", "string", "date-time",
        "2027-03-01T00:00:00Z");
    public static readonly QueryParameter Workings = new("workings",
        "With true, the answer lists each intermediate quantity in order, enough to redo it by hand.", "boolean", Default: "false");
    public static readonly QueryParameter Limit = new("limit", "The maximum number of items.", "integer", Example: "20", Minimum: 1,
        Maximum: 1000, Default: "100");
    public static readonly QueryParameter LimitOfWhole = new("limit", "The maximum number of items; if absent all, up to 100,000.", "integer",
        Example: "500", Minimum: 1, Maximum: 1000);
    public static readonly QueryParameter After = new("after", "Only items after this one: the previous answer's next.", "string", Example: "RB-014");
}
