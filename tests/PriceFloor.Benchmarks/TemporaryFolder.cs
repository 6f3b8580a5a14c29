namespace PriceFloor.Benchmarks;

/// <summary>A folder on the file system of temporary files, which TMPDIR moves; it ends with its user.</summary>
public sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("pricefloor-bench-").FullName;

    public string File(string name) => System.IO.Path.Combine(Path, name);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
