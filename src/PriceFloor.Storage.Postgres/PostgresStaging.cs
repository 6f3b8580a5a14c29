using Npgsql;

namespace PriceFloor.Storage.Postgres;

/// <summary>A connection that prepares a large write; its temporary tables go when it returns to the others.</summary>
internal sealed class PostgresStaging(NpgsqlConnection connection, ServedStudio studio) : Staging
{
    public override async ValueTask<Session> BeginPreparing() => await PostgresSession.Reading(connection, studio, isOwner: false);

    public override async ValueTask<Session> BeginWriting(bool isLarge) => await PostgresSession.Writing(connection, studio, isOwner: false);

    /// <summary>The server moves pages to their place by itself.</summary>
    public override ValueTask Settle() => ValueTask.CompletedTask;

    public override ValueTask DisposeAsync() => connection.DisposeAsync();
}
