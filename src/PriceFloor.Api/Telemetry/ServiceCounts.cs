using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using PriceFloor.Api.Configuration;

namespace PriceFloor.Api.Telemetry;

/// <summary>
/// Counts for whoever monitors the service, if switched on: kinds of requests and verdicts, never whose or of what.
/// </summary>
public sealed class ServiceCounts(Settings settings)
{
    private const int BusiestStudios = 50;

    private static readonly string[] s_methods = ["GET", "HEAD", "POST", "PUT", "DELETE", "OPTIONS", "PATCH"];

    private readonly ConcurrentDictionary<(string Method, string Route, int Status), StrongBox<long>> _requests = new();
    private readonly long[] _checks = new long[Enum.GetValues<Verdict>().Length];
    private readonly ConcurrentDictionary<string, StrongBox<long>> _studios = new();
    private long _failedBackups;

    public IEnumerable<(string Method, string Route, int Status, long Count)> Requests => _requests
        .Select(request => (request.Key.Method, request.Key.Route, request.Key.Status, Volatile.Read(ref request.Value.Value)))
        .OrderBy(request => request.Route, StringComparer.Ordinal).ThenBy(request => request.Method, StringComparer.Ordinal)
        .ThenBy(request => request.Status);

    /// <summary>Requests of the studios that asked most, and of all others together as "other".</summary>
    public IEnumerable<(string Studio, long Count)> Studios
    {
        get
        {
            var all = _studios.Select(studio => (studio.Key, Count: Volatile.Read(ref studio.Value.Value))).OrderByDescending(studio => studio.Count)
                .ThenBy(studio => studio.Key, StringComparer.Ordinal).ToList();
            return all.Count <= BusiestStudios ? all : [.. all.Take(BusiestStudios), ("other", all.Skip(BusiestStudios).Sum(studio => studio.Count))];
        }
    }

    /// <summary>The durations of requests.</summary>
    public Durations Durations { get; } = new();

    /// <summary>Backups that the service should have made but did not.</summary>
    public long FailedBackups => Interlocked.Read(ref _failedBackups);

    public IEnumerable<(Verdict Verdict, long Count)> Checks =>
        Enum.GetValues<Verdict>().Select(verdict => (verdict, Volatile.Read(ref _checks[(int)verdict])));

    /// <summary>Counts a request that was answered.</summary>
    /// <param name="method">Its method, as the caller wrote it.</param>
    /// <param name="route">The pattern of its address, never the address.</param>
    /// <param name="status">The status of its answer.</param>
    /// <param name="elapsed">Its duration.</param>
    public void Count(string method, string route, int status, TimeSpan elapsed)
    {
        var known = s_methods.Contains(method) ? method : "other"; // callers may invent any number of them
        Interlocked.Increment(ref _requests.GetOrAdd((known, route, status), _ => new StrongBox<long>()).Value);
        Durations.Add(known, route, status, elapsed);
    }

    /// <summary>Counts a request of a studio's key. Only the host makes studios, so there are not more of them than it wants.</summary>
    public void CountStudio(string studio) => Interlocked.Increment(ref _studios.GetOrAdd(studio, _ => new StrongBox<long>()).Value);

    public void BackupFailed() => Interlocked.Increment(ref _failedBackups);

    public void Checked(Verdict verdict, long count = 1)
    {
        if (settings.Metrics && count > 0)
            Interlocked.Add(ref _checks[(int)verdict], count);
    }
}
