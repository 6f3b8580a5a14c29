using System.Globalization;
using System.Text;
using Microsoft.Data.Sqlite;

namespace PriceFloor.Storage.Sqlite;

/// <summary>
/// How far a store has come, in a note beside it: it shows if somebody put an older file, or another one, in the store's place.
/// The note is written after commits and not flushed, so it may be behind the store but never ahead of what is committed.
/// </summary>
/// <param name="Life">The name of the store's <see cref="StoreEpoch"/>.</param>
/// <param name="Position">The position of its newest revision; 0 if it has none.</param>
/// <param name="Mark">The mark of its history there.</param>
/// <param name="Number">No revision has had a higher number.</param>
/// <param name="Born">When the store's file was made; null if the file system does not record it.</param>
internal sealed record HighWater(string Life, long Position, string Mark, long Number, string? Born)
{
    /// <summary>Every note has the same length, so one overwrites another in a single page and is never half written.</summary>
    private const int Length = 192;

    private const string NotKept = "unknown";

    public static string FileOf(string store) => store + ".highwater";

    /// <summary>The note beside a store; null if there is none, or if it cannot be read.</summary>
    public static HighWater? Beside(string store)
    {
        try
        {
            var words = File.ReadAllText(FileOf(store)).TrimEnd().Split(' ');
            return words is ["life", var life, "position", var position, "mark", var mark, "number", var number, .. var more]
                && NumberIn(position) is { } at && NumberIn(number) is { } highest
                    ? new HighWater(life, at, mark, highest, more is ["born", not NotKept and var born] ? born : null)
                    : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>How far a store has come, read from itself.</summary>
    /// <param name="connection">The store.</param>
    /// <param name="store">Its file.</param>
    /// <param name="earlier">The known part of its history, so not all of it is read.</param>
    public static HighWater Of(SqliteConnection connection, string store, HighWater? earlier = null)
    {
        using var session = SqliteSession.On(connection, deferred: true);
        var snapshot = new Snapshot(session);
        var number = earlier is null
            ? StoreEpoch.HighestNumber(session).AtOnce()
            : long.Max(earlier.Number, snapshot.HighestNumberSince(earlier.Position).AtOnce());
        var position = snapshot.Position.AtOnce();
        return new HighWater(snapshot.LifeName.AtOnce(), position, snapshot.MarkAt(position).AtOnce(), number, Unix.BornAt(store));
    }

    /// <summary>Writes the note of a store that a verb has changed, on the disk when this returns.</summary>
    public static void Renew(SqliteConnection connection, string store) => Of(connection, store).Write(store, flush: true);

    /// <summary>Why a store is not the one that this note is about; null if it is, or continued from it.</summary>
    public string? WhyNot(SqliteConnection connection, string store)
    {
        using var session = SqliteSession.On(connection, deferred: true);
        var snapshot = new Snapshot(session);
        if (snapshot.LifeName.AtOnce() != Life)
            return "the one served here last had another life";
        if (snapshot.Position.AtOnce() is var here && here < Position)
            return string.Create(CultureInfo.InvariantCulture,
                $"the one served here last had come to position {Position}, this one only to {here}");
        if (snapshot.MarkAt(Position).AtOnce() != Mark)
            return string.Create(CultureInfo.InvariantCulture, $"at position {Position} its history differs from the one served here last");
        return Born is not null && Unix.BornAt(store) is { } born && born != Born
            ? "it is a copy: the file served here last was made at another time, so later writes may be lost"
            : null;
    }

    /// <summary>
    /// The highest number that may have been given out before a store took this one's place, beyond those that the note does not cover.
    /// </summary>
    public long MayHaveGiven => Number + StoreEpoch.Leap;

    public void Write(string store, bool flush)
    {
        var line = string.Create(CultureInfo.InvariantCulture, $"life {Life} position {Position} mark {Mark} number {Number} born {Born ?? NotKept}");
        var options = PrivateFiles.Options(FileMode.OpenOrCreate, FileAccess.Write);
        (options.Share, options.BufferSize) = (FileShare.ReadWrite | FileShare.Delete, 0);
        using var file = new FileStream(FileOf(store), options);
        file.Write(Encoding.ASCII.GetBytes(line.PadRight(Length - 1) + "\n"));
        if (flush)
            file.Flush(flushToDisk: true);
    }

    private static long? NumberIn(string text) =>
        long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;
}
