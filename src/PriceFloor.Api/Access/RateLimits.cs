using System.Net;
using System.Net.Sockets;
using PriceFloor.Api.Configuration;

namespace PriceFloor.Api.Access;

/// <summary>
/// Counts requests a minute for each key, or for each address if there is no key; and wrong keys a minute for each address. A right key works even
/// from an address that has used up its wrong ones: a shop and a broken script often share an address, and 238 secret bits cannot be guessed. The
/// limit reduces the noise, not the chance. Where several processes serve the store, each takes an equal share of a limit, so together they allow no
/// more than one alone.
/// </summary>
public sealed class RateLimits(Settings settings, TimeProvider clock)
{
    /// <summary>Anybody can invent addresses, so only this many are remembered.</summary>
    private const int MostAddresses = 10_000;

    private readonly RateWindows<string> _keys = new(most: null);
    private readonly RateWindows<IPAddress> _addresses = new(MostAddresses);
    private readonly RateWindows<IPAddress> _wrongKeys = new(MostAddresses);

    public const int WindowSeconds = RateWindows<string>.Seconds;

    public int PerMinute => settings.RequestsPerMinute;

    private long Now => clock.GetUtcNow().ToUnixTimeSeconds();

    /// <summary>Whether one more request is allowed, how many are left, and in how many seconds the count starts again.</summary>
    public (bool Allowed, long Left, int Reset) Take(HttpContext context, Caller? caller, int processes)
    {
        var (taken, reset) = caller is not null ? _keys.Take(caller.Account, Now) : _addresses.Take(AddressOf(context), Now);
        var most = ShareOf(PerMinute, processes);
        return (taken <= most, long.Max(0, most - taken), reset);
    }

    /// <summary>Counts a wrong key; returns the seconds to wait if there were too many, else null.</summary>
    public int? TakeWrongKey(HttpContext context, int processes)
    {
        var (taken, reset) = _wrongKeys.Take(AddressOf(context), Now);
        return taken > ShareOf(settings.WrongKeysPerMinute, processes) ? reset : null;
    }

    private static int ShareOf(int limit, int processes) => int.Max(1, limit / processes);

    /// <summary>One subscriber usually owns a whole IPv6 /64, so addresses are counted per /64.</summary>
    private static IPAddress AddressOf(HttpContext context)
    {
        if (context.Connection.RemoteIpAddress is not { } address)
            return IPAddress.None;
        if (address.IsIPv4MappedToIPv6)
            return address.MapToIPv4();
        return address.AddressFamily == AddressFamily.InterNetworkV6 ? new IPAddress([.. address.GetAddressBytes()[..8], .. new byte[8]]) : address;
    }
}
