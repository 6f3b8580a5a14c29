namespace PriceFloor.Storage;

/// <summary>A backup that was made.</summary>
/// <param name="Path">The file.</param>
/// <param name="Bytes">Its size.</param>
/// <param name="Sha256">Its hash, which is also in the file of the same name with <c>.sha256</c>.</param>
/// <param name="Schema">The schema of the store in it.</param>
public sealed record BackupMade(string Path, long Bytes, string Sha256, int Schema)
{
    /// <summary>The file beside a backup with its hash, in the format of sha256sum.</summary>
    public static string HashFileOf(string file) => file + ".sha256";
}
