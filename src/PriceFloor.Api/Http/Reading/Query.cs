using System.Globalization;
using System.Reflection;
using Microsoft.AspNetCore.Http.Metadata;
using PriceFloor.Pricing;

namespace PriceFloor.Api.Http;

/// <summary>One query parameter as the OpenAPI document tells it.</summary>
public sealed record QueryParameter(string Name, string Description, string Type, string? Format = null, string? Example = null, bool Required = false, decimal? Least = null, decimal? Most = null, string? Default = null);

/// <summary>The parameters that several calls share.</summary>
public static class QueryParameters
{
    public static readonly QueryParameter AsOf = new("asOf", "The answer as it was then: a time with its offset.", "string", "date-time", "2027-03-01T00:00:00Z");
    public static readonly QueryParameter Workings = new("workings", "With true, the answer lists each intermediate quantity in order, enough to redo it by hand.", "boolean", Default: "false");
    public static readonly QueryParameter Limit = new("limit", "At most so many items.", "integer", Least: 1, Most: 1000, Default: "100");
    public static readonly QueryParameter After = new("after", "Only items after this one: the previous answer's next.", "string");
}

/// <summary>What a call reads from its query.</summary>
public interface IQuery<TSelf> where TSelf : IQuery<TSelf>
{
    static abstract IReadOnlyList<QueryParameter> Parameters { get; }

    static abstract TSelf Read(QueryValues values);
}

/// <summary>Reads query values strictly; each fault names its parameter and all are told at once.</summary>
public sealed class QueryValues(IQueryCollection query)
{
    private readonly List<InputError> _faults = [];

    public IReadOnlyList<InputError> Faults => _faults;

    public string? Text(string name, int most = Limits.KeyLength)
    {
        if (!query.TryGetValue(name, out var values))
            return null;
        var text = values[0] ?? "";
        if (text.Any(char.IsControl))
            Fault(name, "control-character", $"{name} holds a control character; take it out.");
        else if (text.Length == 0)
            Fault(name, "required", $"{name} is empty; give a value or leave it out.");
        else if (text.Length > most)
            Fault(name, "too-long", string.Create(CultureInfo.InvariantCulture, $"{name} has {text.Length} characters; at most {most} are taken."));
        else
            return text;
        return null;
    }

    public string RequiredText(string name)
    {
        if (!query.ContainsKey(name))
            Fault(name, "required", $"{name} is missing.");
        return Text(name) ?? "";
    }

    public decimal RequiredNumber(string name, NumberFieldAttribute field)
    {
        var text = RequiredText(name);
        if (text.Length == 0)
            return 0;
        var (value, code, detail) = NumberText.Read(text, name, field);
        if (code is not null)
            Fault(name, code, detail!);
        return value;
    }

    public int Whole(string name, int least, int most, int otherwise)
    {
        if (Text(name) is not { } text)
            return otherwise;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value) && value >= least && value <= most)
            return value;
        Fault(name, "out-of-range", string.Create(CultureInfo.InvariantCulture, $"{name} must be a whole number from {least} to {most}."));
        return otherwise;
    }

    public bool Truth(string name)
    {
        if (Text(name) is not { } text)
            return false;
        if (text is not ("true" or "false"))
            Fault(name, "not-one-of", $"{name} must be true or false.");
        return text == "true";
    }

    public DateTimeOffset? Time(string name)
    {
        if (Text(name) is not { } text)
            return null;
        var time = TimeText.ReadTime(text);
        if (time is null)
            Fault(name, "not-a-time", $"{name} must be a time with its offset, written as 2027-03-01T00:00:00Z (a + in a query is written %2B).");
        return time;
    }

    private void Fault(string name, string code, string detail) => _faults.Add(new InputError { Parameter = name, Code = code, Detail = detail });
}

/// <summary>Says on an endpoint which query parameters it takes.</summary>
public sealed record QueryMetadata(IReadOnlyList<QueryParameter> Parameters);

/// <summary>A call's query, read and checked.</summary>
public sealed class FromQuery<T> : IInput, IEndpointParameterMetadataProvider where T : IQuery<T>
{
    private readonly T _value;

    private FromQuery(T value, Problem? problem) => (_value, Problem) = (value, problem);

    public Problem? Problem { get; }

    public T Value => Problem is null ? _value : throw new InvalidOperationException("A query with a problem reached its handler.");

    public static ValueTask<FromQuery<T>?> BindAsync(HttpContext context, ParameterInfo parameter)
    {
        var values = new QueryValues(context.Request.Query);
        var value = T.Read(values);
        return ValueTask.FromResult<FromQuery<T>?>(new(value, values.Faults.Count == 0 ? null : Problem.Invalid(values.Faults)));
    }

    public static void PopulateMetadata(ParameterInfo parameter, EndpointBuilder builder) => builder.Metadata.Add(new QueryMetadata(T.Parameters));
}

/// <summary>A read that can be asked for as it was.</summary>
public sealed record ReadQuery(DateTimeOffset? AsOf) : IQuery<ReadQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters => [QueryParameters.AsOf];

    public static ReadQuery Read(QueryValues values) => new(values.Time("asOf"));
}

/// <summary>A page of a list.</summary>
public sealed record ListQuery(DateTimeOffset? AsOf, int Limit, string? After) : IQuery<ListQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters => [QueryParameters.AsOf, QueryParameters.Limit, QueryParameters.After];

    public static ListQuery Read(QueryValues values) => new(values.Time("asOf"), values.Whole("limit", 1, 1000, 100), values.Text("after"));
}

/// <summary>A computation, with its workings where wanted.</summary>
public sealed record ComputeQuery(DateTimeOffset? AsOf, bool Workings) : IQuery<ComputeQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters => [QueryParameters.AsOf, QueryParameters.Workings];

    public static ComputeQuery Read(QueryValues values) => new(values.Time("asOf"), values.Truth("workings"));
}
