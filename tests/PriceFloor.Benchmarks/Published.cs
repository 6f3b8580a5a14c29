using System.Diagnostics;
using System.Reflection.PortableExecutable;

namespace PriceFloor.Benchmarks;

/// <summary>
/// The service as whoever runs it gets it, compiled ahead for this platform as in the image, published once for all verbs of a run.
/// </summary>
public static class Published
{
    /// <summary>What is made for a run and not kept in the repository.</summary>
    public const string Made = "artifacts/benchmarks";

    private static readonly Lazy<Task<string>> s_folder = new(PublishAsync);

    public static Task<string> Folder => s_folder.Value;

    private static async Task<string> PublishAsync()
    {
        var folder = Path.GetFullPath(Path.Combine(Made, "published"));
        if (Directory.Exists(folder))
            Directory.Delete(folder, recursive: true);
        using var publish = Process.Start("dotnet", ["publish", "src/PriceFloor.Api", "--configuration", "Release", "--use-current-runtime",
            "--self-contained", "false", "--output", folder, "--verbosity", "quiet"]);
        await publish.WaitForExitAsync();
        if (publish.ExitCode != 0)
            throw new InvalidOperationException("Run this in the repository's root; publishing failed.");
        return IsCompiledAhead(Path.Combine(folder, "PriceFloor.Api.dll")) ? folder
            : throw new InvalidOperationException("What was published is not compiled ahead, so its figures would not be those of the image.");
    }

    private static bool IsCompiledAhead(string assembly)
    {
        using var file = new PEReader(File.OpenRead(assembly));
        return file.PEHeaders.CorHeader!.ManagedNativeHeaderDirectory.Size > 0;
    }
}
