namespace PriceFloor.Api.Http.Reading;

/// <summary>Before any handler runs: reports unknown and doubled query parameters, then faults in the body or query.</summary>
public sealed class InputFilter : IEndpointFilter
{
    public const string KeyInAddress =
        "A key in an address ends up in logs and histories; send it as the header \"Authorization: Bearer pf_...\", and rotate this one.";

    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        if (context.HttpContext.Request.QueryString.HasValue && QueryFault(context.HttpContext) is { } fault)
            return Problem.Unreadable(fault);
        foreach (var argument in context.Arguments)
            if (argument is IInput { Problem: { } problem })
                return problem;
        return await next(context);
    }

    private static InputError? QueryFault(HttpContext context)
    {
        if (KeyText.HoldsKey(context.Request.QueryString.Value!))
            return new InputError { Parameter = "Authorization", Code = InputCodes.KeyInAddress, Detail = KeyInAddress };
        var known = context.GetEndpoint()!.Metadata.GetOrderedMetadata<QueryMetadata>().SelectMany(query => query.Parameters)
            .Select(parameter => parameter.Name).ToHashSet();
        foreach (var (name, values) in context.Request.Query)
        {
            if (!known.Contains(name))
                return new InputError
                {
                    Parameter = name,
                    Code = InputCodes.UnknownParameter,
                    Detail = known.Count == 0
                        ? $"This call takes no query parameters; leave \"{name}\" out."
                        : $"\"{name}\" is not a parameter of this call; it takes {string.Join(", ", known)}.",
                };
            if (values.Count > 1)
                return new InputError
                {
                    Parameter = name,
                    Code = InputCodes.DuplicateParameter,
                    Detail = $"\"{name}\" is given twice; leave one out.",
                };
        }

        return null;
    }
}
