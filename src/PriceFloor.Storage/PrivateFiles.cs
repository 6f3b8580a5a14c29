using System.Globalization;

namespace PriceFloor.Storage;

/// <summary>Files that only their owner can read, from the first byte: they have a household's budget and keys.</summary>
public static class PrivateFiles
{
    private const UnixFileMode Others = UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.GroupExecute | UnixFileMode.OtherRead
        | UnixFileMode.OtherWrite | UnixFileMode.OtherExecute;

    /// <summary>More names would hide the message.</summary>
    private const int MostNamed = 8;

    /// <summary>The service's files in the data folder; other people's files there are their own business.</summary>
    private static readonly string[] s_ours = ["pricefloor*", "*admin-key*", "answer-*.tmp", "backups"];

    /// <summary>How to open a file so that it is private if it is created.</summary>
    public static FileStreamOptions Options(FileMode mode, FileAccess access)
    {
        var options = new FileStreamOptions { Mode = mode, Access = access };
        if (!OperatingSystem.IsWindows() && mode != FileMode.Open)
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        return options;
    }

    /// <summary>The files that other users of the machine can reach, with the command that closes them; null if there are none.</summary>
    public static string? Warning(string folder)
    {
        try
        {
            return OperatingSystem.IsWindows() || OpenToOthers(Path.GetFullPath(folder)) is not { Count: > 0 } open ? null
                : Told(Path.GetFullPath(folder), open);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null; // a folder that cannot be listed can still be served
        }
    }

    private static string Told(string folder, List<string> open)
    {
        var named = string.Join(", ", open.Take(MostNamed).Select(one => $"{one} (mode {ModeOf(one)})"));
        var (more, command) = open.Count > MostNamed
            ? (string.Create(CultureInfo.InvariantCulture, $" and {open.Count - MostNamed} more"), $"chmod -R go= {DataFolder.Quoted(folder)}")
            : ("", $"chmod go= {string.Join(' ', open.Select(DataFolder.Quoted))}");
        return $"Other users of this machine can reach {named}{more}. A household's budget and keys are in there. Run: {command}";
    }

    internal static string ModeOf(string path) =>
        OperatingSystem.IsWindows() ? "" : Convert.ToString((int)File.GetUnixFileMode(path), 8).PadLeft(4, '0');

    private static List<string> OpenToOthers(string folder)
    {
        var backups = Path.Combine(folder, "backups");
        var files = s_ours.SelectMany(pattern => Directory.EnumerateFileSystemEntries(folder, pattern)).Distinct().Order(StringComparer.Ordinal);
        var inBackups = Directory.Exists(backups)
            ? Directory.EnumerateFiles(backups, "pricefloor*").Order(StringComparer.Ordinal)
            : Enumerable.Empty<string>();
        return [.. files.Concat(inBackups).Prepend(folder).Where(IsOpen)];
    }

    private static bool IsOpen(string path)
    {
        try
        {
            return !OperatingSystem.IsWindows() && (File.GetUnixFileMode(path) & Others) != UnixFileMode.None;
        }
        catch (IOException)
        {
            return false; // deleted meanwhile
        }
    }
}
