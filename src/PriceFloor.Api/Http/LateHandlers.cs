using System.Reflection;
using Microsoft.AspNetCore.Http.Metadata;

namespace PriceFloor.Api.Http;

/// <summary>The code of a handler that may not be there yet. One for each address, however often the framework puts its endpoints together.</summary>
public sealed class LateHandler
{
    private Lazy<RequestDelegate>? _made;

    public bool IsMade => Volatile.Read(ref _made) is { IsValueCreated: true };

    public void Prepare() => _ = Volatile.Read(ref _made)?.Value;

    internal RequestDelegate Of(Func<RequestDelegate> make)
    {
        var mine = new Lazy<RequestDelegate>(make);
        var made = Interlocked.CompareExchange(ref _made, mine, null) ?? mine;
        return context => made.Value(context);
    }
}

/// <summary>
/// Maps handlers whose code is put together when they are first asked, not all of them before the first answer: that took longer than
/// all else at the start. What their parameters and answers tell about themselves is known from the beginning.
/// </summary>
public static class LateHandlers
{
    private static readonly string[] s_get = [HttpMethods.Get], s_post = [HttpMethods.Post], s_put = [HttpMethods.Put], s_delete = [HttpMethods.Delete];

    public static RouteHandlerBuilder OnGet(this IEndpointRouteBuilder routes, string path, Delegate handler) => routes.On(s_get, path, handler);

    public static RouteHandlerBuilder OnPost(this IEndpointRouteBuilder routes, string path, Delegate handler) => routes.On(s_post, path, handler);

    public static RouteHandlerBuilder OnPut(this IEndpointRouteBuilder routes, string path, Delegate handler) => routes.On(s_put, path, handler);

    public static RouteHandlerBuilder OnDelete(this IEndpointRouteBuilder routes, string path, Delegate handler) => routes.On(s_delete, path, handler);

    private static RouteHandlerBuilder On(this IEndpointRouteBuilder routes, string[] methods, string path, Delegate handler)
    {
        var late = new LateHandler();
        return RouteHandlerServices.Map(routes, path, handler, methods, Told, (_, options, told) =>
        {
            options.EndpointBuilder!.Metadata.Add(late);
            return new RequestDelegateResult(late.Of(() => RequestDelegateFactory.Create(handler, options, told).RequestDelegate), told!.EndpointMetadata);
        });
    }

    /// <summary>What the framework finds out too, but only together with making the code.</summary>
    private static RequestDelegateMetadataResult Told(MethodInfo handler, RequestDelegateFactoryOptions? options)
    {
        var endpoint = options!.EndpointBuilder!;
        foreach (var parameter in handler.GetParameters())
            if (parameter.ParameterType.IsAssignableTo(typeof(IEndpointParameterMetadataProvider)))
                Ask(nameof(AskParameter), parameter.ParameterType, parameter, endpoint);
        if (AnswerOf(handler.ReturnType) is var answer && answer.IsAssignableTo(typeof(IEndpointMetadataProvider)))
            Ask(nameof(AskAnswer), answer, handler, endpoint);
        return new RequestDelegateMetadataResult { EndpointMetadata = [.. endpoint.Metadata] };
    }

    private static Type AnswerOf(Type returned) =>
        returned.IsGenericType && (returned.GetGenericTypeDefinition() == typeof(Task<>) || returned.GetGenericTypeDefinition() == typeof(ValueTask<>)) ? returned.GetGenericArguments()[0] : returned;

    private static void Ask(string how, Type type, object about, EndpointBuilder endpoint) =>
        typeof(LateHandlers).GetMethod(how, BindingFlags.NonPublic | BindingFlags.Static)!.MakeGenericMethod(type).Invoke(null, [about, endpoint]);

    private static void AskParameter<T>(ParameterInfo parameter, EndpointBuilder endpoint) where T : IEndpointParameterMetadataProvider => T.PopulateMetadata(parameter, endpoint);

    private static void AskAnswer<T>(MethodInfo handler, EndpointBuilder endpoint) where T : IEndpointMetadataProvider => T.PopulateMetadata(handler, endpoint);
}
