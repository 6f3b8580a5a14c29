using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Access;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Http;
using PriceFloor.Storage;
using Serilog;

namespace PriceFloor.Api.Backups;

public static class BackupRoutes
{
    /// <summary>Makes a backup while writes go on. If it fails, the disk is at fault and not the caller: the log has the reason.</summary>
    public static Results<Created<BackupAnswer>, Problem> Post(BackupFolder folder, Settings settings, HttpContext context)
    {
        context.Response.Headers.CacheControl = "no-store";
        if (!settings.Store.MakesBackups)
            return Problem.Of(ProblemTypes.KeyNotAllowed, "No key can make a backup here: the store is a database, and its server makes the backups, "
                + "with pg_dump or as base backups. Ask whoever runs it.");
        try
        {
            return TypedResults.Created((string?)null, BackupAnswer.Of(folder.Make(Caller.Of(context).Name)));
        }
        catch (StoreException e)
        {
            Log.Warning("No backup was made: {Message}", e.Message);
            return Problem.Busy();
        }
    }
}

/// <summary>A backup that was made.</summary>
public sealed record BackupAnswer
{
    /// <summary>The file's name in the folder backups of the data folder.</summary>
    public required string Name { get; init; }

    /// <summary>Its size.</summary>
    public required long Bytes { get; init; }

    /// <summary>Its SHA-256, which is also in the file of the same name with .sha256.</summary>
    public required string Sha256 { get; init; }

    /// <summary>The schema of the store in it.</summary>
    public required int Schema { get; init; }

    public static BackupAnswer Of(BackupMade made) =>
        new() { Name = Path.GetFileName(made.Path), Bytes = made.Bytes, Sha256 = made.Sha256, Schema = made.Schema };
}
