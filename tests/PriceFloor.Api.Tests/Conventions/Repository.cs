namespace PriceFloor.Api.Tests.Conventions;

/// <summary>Finds files of the repository from wherever the tests run.</summary>
public static class Repository
{
    public static string Root { get; } = Find(new DirectoryInfo(AppContext.BaseDirectory));

    public static string File(string path) => Path.Combine(Root, path);

    private static string Find(DirectoryInfo folder) =>
        System.IO.File.Exists(Path.Combine(folder.FullName, "PriceFloor.sln")) ? folder.FullName : Find(folder.Parent ?? throw new InvalidOperationException("Not inside the repository."));
}
