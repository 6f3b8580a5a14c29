using System.Reflection;
using Microsoft.AspNetCore.Http.Metadata;

namespace PriceFloor.Api.Http.Reading;

/// <summary>A call's query, read and checked.</summary>
public sealed class FromQuery<T> : IInput, IEndpointParameterMetadataProvider where T : IQuery<T>
{
    private static readonly FromQuery<T> s_nothing = Read(QueryCollection.Empty);

    private readonly T _value;

    private FromQuery(T value, Problem? problem) => (_value, Problem) = (value, problem);

    public Problem? Problem { get; }

    public T Value => Problem is null ? _value : throw new InvalidOperationException("A query with a problem reached its handler.");

    public static ValueTask<FromQuery<T>?> BindAsync(HttpContext context, ParameterInfo parameter) =>
        ValueTask.FromResult<FromQuery<T>?>(context.Request.QueryString.HasValue ? Read(context.Request.Query) : s_nothing);

    public static void PopulateMetadata(ParameterInfo parameter, EndpointBuilder builder) => builder.Metadata.Add(new QueryMetadata(T.Parameters));

    private static FromQuery<T> Read(IQueryCollection query)
    {
        var values = new QueryValues(query);
        var value = T.Read(values);
        return new(value, values.Faults.Count == 0 ? null : Problem.Invalid(values.Faults));
    }
}

/// <summary>Names the query parameters of an endpoint.</summary>
public sealed record QueryMetadata(IReadOnlyList<QueryParameter> Parameters);

/// <summary>A read, now or as of a moment.</summary>
public sealed record ReadQuery(DateTimeOffset? AsOf) : IQuery<ReadQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters => [QueryParameters.AsOf];

    public static ReadQuery Read(QueryValues values) => new(values.Time("asOf"));
}

/// <summary>A page of a list.</summary>
public sealed record ListQuery(DateTimeOffset? AsOf, int Limit, string? After) : IQuery<ListQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters => [QueryParameters.AsOf, QueryParameters.Limit, QueryParameters.After];

    public static ListQuery Read(QueryValues values) => new(values.Time("asOf"), values.Integer("limit", 1, 1000, 100), values.Text("after"));
}

/// <summary>A computation, with its workings if requested.</summary>
public sealed record ComputeQuery(DateTimeOffset? AsOf, bool Workings) : IQuery<ComputeQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters => [QueryParameters.AsOf, QueryParameters.Workings];

    public static ComputeQuery Read(QueryValues values) => new(values.Time("asOf"), values.Boolean("workings"));
}
