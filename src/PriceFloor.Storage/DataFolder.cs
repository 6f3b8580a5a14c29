using System.Globalization;

namespace PriceFloor.Storage;

/// <summary>Reports what prevents using a data folder or a store, so whoever runs the server can fix it.</summary>
public static class DataFolder
{
    /// <summary>ENOSPC and EROFS.</summary>
    private const int NoSpace = 28, ReadOnlyFileSystem = 30;

    /// <summary>The user of the process: by number, and by name if the system knows one, which a container often does not.</summary>
    public static string Asker => Unix.Self is not { } self ? $"user {Environment.UserName}"
        : string.Create(CultureInfo.InvariantCulture,
            $"user{(Environment.UserName is { Length: > 0 } name ? " " + name : "")} (uid {self.User}, gid {self.Group})");

    /// <summary>Makes a folder for its owner only, since a household's budget goes into it; an existing one stays as it is.</summary>
    public static void Create(string folder)
    {
        if (OperatingSystem.IsWindows())
            Directory.CreateDirectory(folder);
        else
            Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }

    /// <summary>The folder cannot be written: by whom, whose it is, and what fixes it.</summary>
    public static StoreException Refused(string folder, Exception fault)
    {
        var path = Path.GetFullPath(folder);
        var there = Existing(path);
        var parent = there == path ? "" : $" (its parent {there} is there)";
        var cure = Cure(path, isThere: there == path, fault);
        return Because(
            $"The data folder {path}{parent} cannot be written by {Asker}: {fault.Message} {Rights(there)}{cure}, "
            + "or set PRICEFLOOR_DATA to a folder that can be written and has space.", fault);
    }

    private static string Cure(string path, bool isThere, Exception fault) => (fault, Unix.Self) switch
    {
        (IOException { HResult: NoSpace }, _) => "Make room on its disk",
        (IOException { HResult: ReadOnlyFileSystem }, _) => "Mount it writable",
        (_, { } me) => string.Create(CultureInfo.InvariantCulture,
            $"Run: {(isThere ? "" : $"mkdir -p {Quoted(path)} && ")}chown -R {me.User}:{me.Group} {Quoted(path)} && chmod u+rwx {Quoted(path)}"),
        _ => "Give this user the right to write there",
    };

    internal static string Quoted(string path) => path.All(letter => char.IsLetterOrDigit(letter) || "/._-+:@".Contains(letter)) ? path
        : $"'{path.Replace("'", "'\\''", StringComparison.Ordinal)}'";

    /// <summary>A fault with the trouble of its cause.</summary>
    internal static StoreException Because(string message, Exception fault) => new(message, fault) { Trouble = TroubleOf(fault) };

    /// <summary>The trouble that the engine or the file system reports.</summary>
    internal static StoreTrouble? TroubleOf(Exception? fault) => fault switch
    {
        StoreTroubleException engines => engines.Trouble,
        IOException { HResult: NoSpace } => StoreTrouble.Full,
        IOException { HResult: ReadOnlyFileSystem } or UnauthorizedAccessException => StoreTrouble.ReadOnly,
        _ => null,
    };

    private static string Existing(string path)
    {
        var there = path;
        while (!Directory.Exists(there) && !File.Exists(there) && Path.GetDirectoryName(there) is { } above)
            there = above;
        return there;
    }

    private static string Rights(string path)
    {
        if (OperatingSystem.IsWindows() || Unix.OwnerOf(path) is not { } owner)
            return "";
        return string.Create(CultureInfo.InvariantCulture,
            $"{path} belongs to uid {owner.User}, gid {owner.Group}, mode {PrivateFiles.ModeOf(path)}. ");
    }
}
