namespace PriceFloor.Api.Http;

/// <summary>Before any handler runs: unknown and doubled query parameters, then what a body or query has wrong.</summary>
public sealed class InputFilter : IEndpointFilter
{
    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        var known = context.HttpContext.GetEndpoint()!.Metadata.GetOrderedMetadata<QueryMetadata>().SelectMany(query => query.Parameters).Select(parameter => parameter.Name).ToHashSet();
        foreach (var (name, values) in context.HttpContext.Request.Query)
        {
            if (!known.Contains(name))
                return Problem.Unreadable(new InputError { Parameter = name, Code = "unknown-parameter", Detail = known.Count == 0 ? $"This call takes no query parameters; leave \"{name}\" out." : $"\"{name}\" is not a parameter of this call; it takes {string.Join(", ", known)}." });
            if (values.Count > 1)
                return Problem.Unreadable(new InputError { Parameter = name, Code = "duplicate-parameter", Detail = $"\"{name}\" is given twice; leave one out." });
        }

        var problem = context.Arguments.OfType<IInput>().Select(input => input.Problem).FirstOrDefault(problem => problem is not null);
        return problem ?? await next(context);
    }
}
