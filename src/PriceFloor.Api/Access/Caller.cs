namespace PriceFloor.Api.Access;

/// <summary>Who asks: the name and the scopes of the key, and what of the store it sees.</summary>
public sealed record Caller(string Name, IReadOnlySet<Scope> Scopes)
{
    private readonly bool[] _may = [.. Enum.GetValues<Scope>().Select(scope => Holds(Scopes, scope))];

    public ProfileAccess Access { get; init; } = ProfileAccess.All;

    /// <summary>SHA-256 of the secret that the request came with.</summary>
    public byte[] Secret { get; init; } = [];

    public bool May(Scope scope) => _may[(int)scope];

    /// <summary>Reading holds checking, checking holds the verdict; writing holds listed prices.</summary>
    private static bool Holds(IReadOnlySet<Scope> scopes, Scope scope) => scopes.Contains(scope) || scope switch
    {
        Scope.Verdict => Holds(scopes, Scope.Check),
        Scope.Check => scopes.Contains(Scope.Read),
        Scope.Prices => scopes.Contains(Scope.Write),
        _ => false,
    };

    public static Caller Of(HttpContext context) =>
        context.Features.Get<Caller>() ?? throw new InvalidOperationException("The endpoint asks for no key but wants to know the caller.");
}
