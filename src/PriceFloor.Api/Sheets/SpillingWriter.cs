using System.IO.Pipelines;

namespace PriceFloor.Api.Sheets;

/// <summary>
/// An answer that is written while its request is still arriving. Many HTTP clients send their whole request before they read the first byte of an
/// answer; if it is large, both sides would wait for each other for ever. If the caller has not read for a while, the rest goes to an unnamed file,
/// and from there to the caller once the request is complete. Memory stays constant either way.
/// </summary>
/// <param name="pipe">To the caller.</param>
/// <param name="folder">Where the file is made.</param>
/// <param name="putBy">Counts its bytes.</param>
/// <param name="longest">The time that the caller has for a block once the request is complete; then a
/// <see cref="TimeoutException"/> ends the answer.</param>
public sealed class SpillingWriter(PipeWriter pipe, string folder, PutBy putBy, TimeSpan longest) : PipeWriter, IAsyncDisposable
{
    private static readonly TimeSpan s_patience = TimeSpan.FromMilliseconds(500);

    private readonly System.Buffers.ArrayBufferWriter<byte> _held = new(64 * 1024);
    private Task? _stuck;
    private FileStream? _spilled;
    private long _counted;

    public override void Advance(int bytes) => _held.Advance(bytes);

    public override Memory<byte> GetMemory(int sizeHint = 0) => _held.GetMemory(sizeHint);

    public override Span<byte> GetSpan(int sizeHint = 0) => _held.GetSpan(sizeHint);

    public override void CancelPendingFlush() => pipe.CancelPendingFlush();

    public override void Complete(Exception? exception = null) { }

    public override async ValueTask<FlushResult> FlushAsync(CancellationToken cancellationToken = default)
    {
        if (_spilled is not null)
        {
            putBy.Add(_held.WrittenCount);
            _counted += _held.WrittenCount;
            await _spilled.WriteAsync(_held.WrittenMemory, cancellationToken);
            _held.ResetWrittenCount();
            return default;
        }

        var writing = pipe.WriteAsync(_held.WrittenMemory, cancellationToken);
        _held.ResetWrittenCount(); // the pipe has copied it
        if (writing.IsCompletedSuccessfully)
            return writing.Result;
        var flush = writing.AsTask();
        if (await Task.WhenAny(flush, Task.Delay(s_patience, cancellationToken)) == flush)
            return await flush;
        (_stuck, _spilled) = (flush, Unnamed(folder));
        return default;
    }

    /// <summary>Sends what is in the file. The request must be read to its end before.</summary>
    public async Task FinishAsync(CancellationToken cancel)
    {
        if (_spilled is null)
            return;
        await _stuck!.WaitAsync(longest, cancel);
        _spilled.Position = 0;
        var block = new byte[16 * 1024];
        while (await _spilled.ReadAsync(block, cancel) is > 0 and var count)
            await pipe.WriteAsync(block.AsMemory(0, count), cancel).AsTask().WaitAsync(longest, cancel);
    }

    public async ValueTask DisposeAsync()
    {
        putBy.Remove(_counted);
        if (_spilled is not null)
            await _spilled.DisposeAsync();
    }

    /// <summary>Deletes the files of a process that was killed. Nobody else may be serving the folder.</summary>
    public static void ClearAway(string folder)
    {
        foreach (var left in Directory.GetFiles(folder, "answer-*.tmp"))
            File.Delete(left);
    }

    /// <summary>A file of the process alone, which is gone when it is closed.</summary>
    public static FileStream Unnamed(string folder)
    {
        var options = new FileStreamOptions
        {
            Mode = FileMode.CreateNew,
            Access = FileAccess.ReadWrite,
            Options = FileOptions.DeleteOnClose | FileOptions.Asynchronous,
        };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        return new FileStream(Path.Combine(folder, $"answer-{Guid.NewGuid():N}.tmp"), options);
    }
}
