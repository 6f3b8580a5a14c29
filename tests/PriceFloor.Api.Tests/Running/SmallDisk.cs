using System.Diagnostics;
using Xunit;

namespace PriceFloor.Api.Tests.Running;

/// <summary>
/// A disk of a few hundred kilobytes (a tmpfs). Mounting one needs root, or sudo without a password, as on CI machines; elsewhere the test is
/// skipped.
/// </summary>
public sealed class SmallDisk : IDisposable
{
    private readonly bool _bySudo;

    private SmallDisk(string path, bool bySudo) => (Path, _bySudo) = (path, bySudo);

    public string Path { get; }

    public static SmallDisk OfKilobytes(int size)
    {
        var path = Directory.CreateTempSubdirectory("pricefloor-disk-").FullName;
        foreach (var bySudo in new[] { false, true })
            if (OperatingSystem.IsLinux() && Run(bySudo, "mount", "-t", "tmpfs", "-o", $"size={size}k,mode=0777", "tmpfs", path))
                return new SmallDisk(path, bySudo);
        Directory.Delete(path);
        Assert.Skip("No tmpfs can be mounted here.");
        return null!;
    }

    public void BecomesReadOnly() => Assert.True(Run(_bySudo, "mount", "-o", "remount,ro", Path));

    public void Dispose()
    {
        Run(_bySudo, "umount", "-l", Path);
        Directory.Delete(Path);
    }

    private static bool Run(bool bySudo, params string[] words)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(bySudo ? "sudo" : words[0], bySudo ? ["-n", .. words] : words[1..])
            {
                UseShellExecute = false,
                RedirectStandardError = true,
                RedirectStandardOutput = true,
            })!;
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false; // there is no such program
        }
    }
}
