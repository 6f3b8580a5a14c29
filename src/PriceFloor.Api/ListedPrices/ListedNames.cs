using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;

namespace PriceFloor.Api.ListedPrices;

/// <summary>
/// At the address of a listed price the design may be named by one of its other names: the price is then that name's own. A name with a slash comes
/// with it encoded.
/// </summary>
internal sealed class ListedNames : IEndpointFilter
{
    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        var route = context.HttpContext.Request.RouteValues;
        if (route["sku"] is string name && route["channel"] is string channel && await DesignNamed(context.HttpContext, name) is var (sku, alias))
            for (var i = 0; i < context.Arguments.Count; i++)
                if (context.Arguments[i] is PathKey)
                    context.Arguments[i] = new PathKey(new ListedPriceKey(sku, channel, alias).ToString()) { Chosen = [channel] };
        return await next(context);
    }

    /// <summary>The design that has the name as an alias, and the alias; null if it is a key, or leads nowhere.</summary>
    private static async ValueTask<(string Sku, string Alias)?> DesignNamed(HttpContext context, string name)
    {
        var documents = context.RequestServices.GetRequiredService<CatalogueSource>().SeenBy(Caller.Of(context).Access);
        return await documents.Read<(string, string)?>(null, catalogue =>
        {
            if (catalogue.Design(name) is not null)
                return null;
            foreach (var alias in new[] { name, name.Replace("%2F", "/", StringComparison.OrdinalIgnoreCase) })
                if (catalogue.DesignNamed(alias) is { } design)
                    return (design.Key, alias);
            return null;
        });
    }
}
