using System.Globalization;
using System.Security.Cryptography;

namespace PriceFloor.Api.Http;

/// <summary>
/// Names of requests: 32 hexadecimal digits. The first half is the microsecond, or the one after the last that was given, so names are in order of
/// time and the log can be searched by them. The second half is this process's own.
/// </summary>
public static class RequestIds
{
    private static readonly string s_process = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(8));

    private static long s_last;

    public static string Next(TimeProvider clock)
    {
        var now = (clock.GetUtcNow() - DateTimeOffset.UnixEpoch).Ticks / TimeSpan.TicksPerMicrosecond;
        var last = Volatile.Read(ref s_last);
        while (true)
        {
            var next = long.Max(now, last + 1);
            if (Interlocked.CompareExchange(ref s_last, next, last) is var seen && seen == last)
                return string.Create(CultureInfo.InvariantCulture, $"{next:x16}{s_process}");
            last = seen;
        }
    }
}
