using System.Runtime.InteropServices;
using System.Text;

namespace PriceFloor.Storage;

/// <summary>The few functions of the operating system that .NET does not offer. Where one is not available, the result is null or empty.</summary>
internal static class Unix
{
    private const uint HasBirth = 0x800; // STATX_BTIME

    /// <summary>After this, what was written to a file, or a folder's list of names, survives a power cut.</summary>
    public static void Flush(string path)
    {
        if (OperatingSystem.IsWindows())
            return;
        var handle = Open(path);
        if (handle < 0)
            throw new IOException($"{path} cannot be opened to be flushed to the disk (error {Marshal.GetLastPInvokeError()}).");
        try
        {
            if (FSync(handle) != 0)
                throw new IOException($"{path} cannot be flushed to the disk (error {Marshal.GetLastPInvokeError()}).");
        }
        finally
        {
            _ = Close(handle);
        }
    }

    /// <summary>The first bytes of a file as text, even of one that another process has locked; empty if it cannot be read.</summary>
    public static string Peek(string path)
    {
        if (OperatingSystem.IsWindows() || Open(path) is not (>= 0 and var handle))
            return "";
        var bytes = new byte[200];
        var count = Read(handle, bytes, bytes.Length);
        _ = Close(handle);
        return Encoding.UTF8.GetString(bytes, 0, (int)nint.Max(count, 0)).Trim();
    }

    /// <summary>The user and group of the process; null if the system has no such numbers.</summary>
    public static (uint User, uint Group)? Self => OperatingSystem.IsWindows() ? null : (EffectiveUser(), EffectiveGroup());

    /// <summary>The owner of a file or folder; null if that is unknown.</summary>
    public static (uint User, uint Group)? OwnerOf(string path) =>
        // where struct statx has them
        Asked(path, 0x7ff) is { } answer ? (BitConverter.ToUInt32(answer, 20), BitConverter.ToUInt32(answer, 24)) : null;

    /// <summary>
    /// When a file was made, as its file system records it: a copy has another time, however old its other times are. Null if it is not recorded.
    /// </summary>
    public static string? BornAt(string path) => Asked(path, HasBirth) is { } answer && (BitConverter.ToUInt32(answer, 0) & HasBirth) != 0
        ? FormattableString.Invariant($"{BitConverter.ToInt64(answer, 80)}.{BitConverter.ToUInt32(answer, 88):D9}")
        : null;

    /// <summary>struct statx, which is the same on every Linux.</summary>
    private static byte[]? Asked(string path, uint mask)
    {
        if (!OperatingSystem.IsLinux())
            return null;
        var answer = new byte[256];
        try
        {
            return Statx(-100, Named(path), 0, mask, answer) == 0 ? answer : null;
        }
        catch (EntryPointNotFoundException)
        {
            return null;
        }
    }

    private static int Open(string path) => Open(Named(path), 0);

    private static byte[] Named(string path) => Encoding.UTF8.GetBytes(path + "\0");

    [DllImport("libc", EntryPoint = "open", SetLastError = true), DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    private static extern int Open(byte[] path, int flags);

    [DllImport("libc", EntryPoint = "read"), DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    private static extern nint Read(int handle, byte[] buffer, nint count);

    [DllImport("libc", EntryPoint = "fsync", SetLastError = true), DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    private static extern int FSync(int handle);

    [DllImport("libc", EntryPoint = "close"), DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    private static extern int Close(int handle);

    [DllImport("libc", EntryPoint = "geteuid"), DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    private static extern uint EffectiveUser();

    [DllImport("libc", EntryPoint = "getegid"), DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    private static extern uint EffectiveGroup();

    [DllImport("libc", EntryPoint = "statx"), DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    private static extern int Statx(int folder, byte[] path, int flags, uint mask, byte[] answer);
}
