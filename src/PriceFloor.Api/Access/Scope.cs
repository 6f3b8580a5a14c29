using PriceFloor.Api.Configuration;

namespace PriceFloor.Api.Access;

/// <summary>What a key may do.</summary>
public enum Scope
{
    /// <summary>Price checks: the verdict and whether the price carries its share, without figures.</summary>
    Verdict,

    /// <summary>Price checks with floor and target price; nothing that reveals costs.</summary>
    Check,

    /// <summary>Writing listed prices.</summary>
    Prices,

    /// <summary>Adding, correcting and withdrawing lines of what was sold and made; reads nothing.</summary>
    Log,

    /// <summary>Everything that can be read.</summary>
    Read,

    /// <summary>Writing profiles, designs and channels, and listed prices.</summary>
    Write,

    /// <summary>Managing keys and backups, and reading who changed what.</summary>
    Admin,

    /// <summary>Making, limiting, exporting, importing and forgetting studios, where one service has many. Only keys of the host have it.</summary>
    Host,
}

/// <summary>The scope that an endpoint needs; null: any key will do.</summary>
public sealed record NeedsScope(Scope? Scope);

public static class ScopeConventions
{
    /// <summary>The scopes that a key of a studio may have.</summary>
    public static IReadOnlyList<Scope> OfStudios { get; } = [.. Enum.GetValues<Scope>().Where(scope => scope != Scope.Host)];

    /// <summary>The scopes of a key in the store of the process: that of its studio, or of the host.</summary>
    public static IReadOnlyList<Scope> Of(Settings settings) => settings.HasManyStudios ? OfHosts : OfStudios;

    /// <summary>The scopes that a key of the host may have: it has no documents.</summary>
    public static IReadOnlyList<Scope> OfHosts { get; } = [Scope.Admin, Scope.Host];

    public static TBuilder Needs<TBuilder>(this TBuilder builder, Scope scope) where TBuilder : IEndpointConventionBuilder =>
        builder.WithMetadata(new NeedsScope(scope));

    public static TBuilder NeedsAnyKey<TBuilder>(this TBuilder builder) where TBuilder : IEndpointConventionBuilder =>
        builder.WithMetadata(new NeedsScope(null));
}
