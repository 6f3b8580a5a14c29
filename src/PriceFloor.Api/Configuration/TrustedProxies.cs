using System.Net;
using Microsoft.AspNetCore.HttpOverrides;
using IPNetwork = System.Net.IPNetwork;

namespace PriceFloor.Api.Configuration;

/// <summary>The reverse proxies whose X-Forwarded headers are trusted: single addresses and whole networks.</summary>
public sealed class TrustedProxies
{
    public const string Setting = "PRICEFLOOR_TRUSTED_PROXIES";

    private readonly IReadOnlyList<IPNetwork> _networks;

    private TrustedProxies(IReadOnlyList<IPNetwork> networks) => _networks = networks;

    public int Count => _networks.Count;

    /// <summary>
    /// Goes back through a chain of proxies while each of them is trusted. The first address that is not trusted is the caller's, whatever it claims
    /// to have forwarded.
    /// </summary>
    public ForwardedHeadersOptions Headers
    {
        get
        {
            var options = new ForwardedHeadersOptions
            {
                ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto,
                ForwardLimit = null,
            };
            options.KnownProxies.Clear();
            options.KnownIPNetworks.Clear();
            foreach (var network in _networks)
                options.KnownIPNetworks.Add(network);
            return options;
        }
    }

    public static TrustedProxies Read(IEnumerable<string> texts) => new([.. texts.Select(NetworkOf)]);

    private static IPNetwork NetworkOf(string text)
    {
        var (written, length) = text.Split('/') is [var before, var after] ? (before, after) : (text, null);
        if (!IPAddress.TryParse(written, out var address))
            throw Refused(text, "is not an IP address or a network; write it like 192.0.2.7, 192.0.2.0/24 or 2001:db8::/64");
        var bits = address.GetAddressBytes().Length * 8;
        if (length is null)
            return new IPNetwork(address, bits);
        if (!int.TryParse(length, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var prefix)
                || prefix > bits)
            throw Refused(text, FormattableString.Invariant($"must end with a whole number from 0 to {bits}"));
        var first = FirstOf(address, prefix);
        return first.Equals(address)
            ? new IPNetwork(first, prefix)
            : throw Refused(text, $"is an address within a network; write the network as {first}/{length}");
    }

    private static IPAddress FirstOf(IPAddress address, int prefix)
    {
        var bytes = address.GetAddressBytes();
        for (var bit = prefix; bit < bytes.Length * 8; bit++)
            bytes[bit / 8] &= (byte)~(0x80 >> (bit % 8));
        return new IPAddress(bytes);
    }

    private static SettingsException Refused(string text, string why) => new($"{Setting}: \"{text}\" {why}.");
}
