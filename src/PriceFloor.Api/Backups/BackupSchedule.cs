using PriceFloor.Api.Configuration;
using PriceFloor.Api.HealthChecks;
using PriceFloor.Storage;
using Serilog;

namespace PriceFloor.Api.Backups;

/// <summary>
/// A backup at a fixed interval, counted from the newest existing one, so a service that restarts every night still makes them. After each backup
/// the oldest ones are deleted.
/// </summary>
/// <param name="settings">How often, and how many are kept.</param>
/// <param name="folder">The backups of the process's own store.</param>
/// <param name="studios">Those of a host's studios.</param>
/// <param name="opening">Nothing is copied before the store is open.</param>
/// <param name="clock">Says when one is due.</param>
public sealed class BackupSchedule(Settings settings, BackupFolder folder, StudioBackups studios, StoreReadiness opening, TimeProvider clock)
    : BackgroundService
{
    private static readonly TimeSpan s_again = TimeSpan.FromMinutes(10);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (settings.BackupEveryHours == 0)
            return;
        await opening.Done.WaitAsync(stoppingToken);
        var every = TimeSpan.FromHours(settings.BackupEveryHours);
        while (!stoppingToken.IsCancellationRequested)
            await Task.Delay(await MakeAllThatAreDue(every, stoppingToken), clock, stoppingToken);
    }

    /// <summary>Makes the backups that are due, one after another, and returns how long to wait for the next.</summary>
    private async Task<TimeSpan> MakeAllThatAreDue(TimeSpan every, CancellationToken stopping)
    {
        var wait = MakeOneThatIsDue(folder, every);
        foreach (var studio in await studios.All())
        {
            stopping.ThrowIfCancellationRequested();
            var left = WaitAfter(BackupFolder.NewestOf(studio.Folder), every);
            if (left <= TimeSpan.Zero)
                left = await studio.Open(one => MakeOneThatIsDue(one, every)) ?? s_again; // opened only for a backup that is due
            wait = left < wait ? left : wait;
        }

        return wait;
    }

    /// <summary>At most the interval, if the clock was set back.</summary>
    private TimeSpan WaitAfter(DateTimeOffset? newest, TimeSpan every) =>
        newest is not { } made ? TimeSpan.Zero : made + every - clock.GetUtcNow() is var wait && wait < every ? wait : every;

    /// <summary>Makes a backup if it is due, and returns how long to wait for the next.</summary>
    private TimeSpan MakeOneThatIsDue(BackupFolder folder, TimeSpan every)
    {
        try
        {
            if (WaitAfter(folder.Newest, every) is var wait && wait > TimeSpan.Zero)
                return wait;
            var made = folder.Make(Trail.TimedBackup);
            folder.KeepOnly(settings.BackupsKept);
            Log.Information("Backup {Path}, {Bytes} bytes, sha256 {Sha256}", made.Path, made.Bytes, made.Sha256);
            return every;
        }
        catch (Exception e) when (e is StoreException or StoreTroubleException or IOException or UnauthorizedAccessException)
        {
            Log.Error("No backup was made: {Message} The next attempt is in {Minutes} minutes", e.Message, s_again.TotalMinutes);
            return s_again;
        }
    }
}
