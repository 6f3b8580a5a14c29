using PriceFloor.Api.Access;

namespace PriceFloor.Api.AccessKeys;

/// <summary>
/// What a key of a studio may do: every scope but that of a host, which answers show apart, so no client meets a new word in scopes.
/// </summary>
public enum StudioScope
{
    /// <summary>Verdicts without figures.</summary>
    Verdict = Scope.Verdict,

    /// <summary>Price checks with floor and target price.</summary>
    Check = Scope.Check,

    /// <summary>Writing listed prices.</summary>
    Prices = Scope.Prices,

    /// <summary>Adding lines of what was sold and made.</summary>
    Log = Scope.Log,

    /// <summary>Everything that can be read.</summary>
    Read = Scope.Read,

    /// <summary>Writing documents.</summary>
    Write = Scope.Write,

    /// <summary>Managing keys and backups.</summary>
    Admin = Scope.Admin,
}
