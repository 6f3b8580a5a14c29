namespace PriceFloor.Api.Access;

/// <summary>The caller: the name and the scopes of the key, and what the key sees of the store.</summary>
public sealed record Caller(string Name, IReadOnlySet<Scope> Scopes)
{
    private readonly bool[] _may = [.. Enum.GetValues<Scope>().Select(scope => Holds(Scopes, scope))];

    /// <summary>The studio whose key it is; null if the process serves one, and for a host's key.</summary>
    public string? Studio
    {
        get;
        init
        {
            field = value;
            Account = value is null ? Name : $"{value}/{Name}"; // no name of a key has a slash
        }
    }

    /// <summary>What limits count by: a name is unique only within its studio.</summary>
    public string Account { get; private init; } = Name;

    public ProfileAccess Access { get; init; } = ProfileAccess.All;

    /// <summary>SHA-256 of the secret in the request.</summary>
    public byte[] Secret { get; init; } = [];

    public bool May(Scope scope) => _may[(int)scope];

    /// <summary>Read includes check, and check includes verdict; write includes prices.</summary>
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
