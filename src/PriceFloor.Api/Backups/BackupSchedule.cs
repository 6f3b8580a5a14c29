using PriceFloor.Api.Configuration;
using PriceFloor.Api.HealthChecks;
using PriceFloor.Storage;
using Serilog;

namespace PriceFloor.Api.Backups;

/// <summary>
/// A backup at a fixed interval, counted from the newest existing one, so a service that restarts every night still makes them. After each backup
/// the oldest ones are deleted.
/// </summary>
public sealed class BackupSchedule(Settings settings, BackupFolder folder, StoreReadiness opening, TimeProvider clock) : BackgroundService
{
    private static readonly TimeSpan s_again = TimeSpan.FromMinutes(10);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (settings.BackupEveryHours == 0)
            return;
        await opening.Done.WaitAsync(stoppingToken);
        var every = TimeSpan.FromHours(settings.BackupEveryHours);
        while (!stoppingToken.IsCancellationRequested)
            await Task.Delay(MakeOneThatIsDue(every), clock, stoppingToken);
    }

    /// <summary>Makes a backup if it is due, and returns how long to wait for the next.</summary>
    private TimeSpan MakeOneThatIsDue(TimeSpan every)
    {
        try
        {
            var wait = folder.Newest is { } newest ? newest + every - clock.GetUtcNow() : TimeSpan.Zero;
            if (wait > TimeSpan.Zero)
                return wait < every ? wait : every; // longer, if the clock was set back
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
