using System.Collections.Frozen;

namespace PriceFloor.Api.Access;

/// <summary>Which cost profiles a key may see: all of them, or only those it is limited to.</summary>
public sealed class ProfileAccess
{
    public static readonly ProfileAccess All = new(null);

    private readonly FrozenSet<string>? _profiles;

    private ProfileAccess(FrozenSet<string>? profiles) => _profiles = profiles;

    public bool IsWhole => _profiles is null;

    public static ProfileAccess Of(IEnumerable<string> profiles) => new(profiles.ToFrozenSet());

    public bool Sees(string profile) => _profiles is null || _profiles.Contains(profile);
}
