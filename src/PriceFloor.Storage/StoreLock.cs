using System.Globalization;
using System.Text;

namespace PriceFloor.Storage;

/// <summary>
/// Only one process at a time serves a data folder: a second one would answer from memory that the first one's writes have made old. The operating
/// system releases the lock when its holder ends, however it ends; the file stays and means nothing by itself.
/// </summary>
/// <param name="folder">The data folder.</param>
/// <param name="clock">Tells since when, to others.</param>
public sealed class StoreLock(string folder, TimeProvider clock) : IDisposable
{
    public const string FileName = "pricefloor.lock";

    private FileStream? _held;

    /// <summary>Takes the lock until this is disposed of, or reports who has it.</summary>
    public void Take()
    {
        var path = Path.Combine(Path.GetFullPath(folder), FileName);
        try
        {
            DataFolder.Create(Path.GetDirectoryName(path)!);
            _held = OpenAlone(path);
            _held.SetLength(0);
            _held.Write(Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture,
                $"pid {Environment.ProcessId}, started {clock.GetUtcNow():yyyy-MM-ddTHH:mm:ssZ}, host {Environment.MachineName}\n")));
        }
        catch (IOException e) when (IsHeld(e))
        {
            var holder = Unix.Peek(path) is { Length: > 0 } text ? $" ({text})" : "";
            throw new StoreException(
                $"Another PriceFloor{holder} is using the data folder {Path.GetDirectoryName(path)}: it holds {path}. "
                + "Stop it first, or set PRICEFLOOR_DATA to another folder.", e)
            {
                Trouble = StoreTrouble.Busy,
            };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw DataFolder.Refused(Path.GetDirectoryName(path)!, e);
        }
    }

    public void Dispose()
    {
        _held?.Dispose();
        _held = null;
    }

    /// <summary>Waits a moment for a holder that is just ending, or for its child process that has not yet closed inherited files.</summary>
    private static FileStream OpenAlone(string path)
    {
        var options = PrivateFiles.Options(FileMode.OpenOrCreate, FileAccess.ReadWrite);
        (options.Share, options.BufferSize) = (FileShare.None, 0);
        for (var tries = 1; ; tries++)
            try
            {
                return new FileStream(path, options);
            }
            catch (IOException e) when (tries < 10 && IsHeld(e))
            {
                Thread.Sleep(TimeSpan.FromMilliseconds(100));
            }
    }

    /// <summary>
    /// True if the lock is the obstacle, and not the disk or permissions: EWOULDBLOCK on Linux and macOS, a sharing violation on Windows.
    /// </summary>
    private static bool IsHeld(IOException fault) => fault.HResult is 11 or 35 or unchecked((int)0x80070020);
}
