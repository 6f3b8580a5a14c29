using System.Collections.Concurrent;
using System.Net;
using Microsoft.AspNetCore.Connections;

namespace PriceFloor.Api.Configuration;

/// <summary>
/// Limits the connections of one address, so one caller cannot take them all. One subscriber usually owns a whole IPv6 /64, so addresses are
/// counted per /64. Behind a proxy all callers have its address, so nothing is counted there.
/// </summary>
public sealed class ConnectionsPerAddress(int most)
{
    private readonly ConcurrentDictionary<IPAddress, int> _open = new();

    /// <summary>Accepts a connection, or ends it at once.</summary>
    public ConnectionDelegate Count(ConnectionDelegate next) => async connection =>
    {
        if ((connection.RemoteEndPoint as IPEndPoint)?.Address is not { } remote)
        {
            await next(connection); // a Unix socket has no address
            return;
        }

        var address = NetworkOf(remote);
        try
        {
            if (_open.AddOrUpdate(address, 1, (_, open) => open + 1) <= most)
                await next(connection);
            else
                connection.Abort(new ConnectionAbortedException("This address already has the most connections that one may have."));
        }
        finally
        {
            if (_open.AddOrUpdate(address, 0, (_, open) => open - 1) == 0)
                _open.TryRemove(new KeyValuePair<IPAddress, int>(address, 0));
        }
    };

    private static IPAddress NetworkOf(IPAddress address)
    {
        if (address.IsIPv4MappedToIPv6)
            return address.MapToIPv4();
        if (address.AddressFamily != System.Net.Sockets.AddressFamily.InterNetworkV6)
            return address;
        var bytes = address.GetAddressBytes();
        Array.Clear(bytes, 8, 8);
        return new IPAddress(bytes);
    }
}
