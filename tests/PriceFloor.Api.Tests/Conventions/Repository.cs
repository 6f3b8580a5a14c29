using System.Runtime.CompilerServices;

namespace PriceFloor.Api.Tests.Conventions;

/// <summary>Finds files of the repository from wherever the tests run; built to another place, from where this file is.</summary>
public static class Repository
{
    public static string Root { get; } = Above(AppContext.BaseDirectory) ?? Above(ThisFile())
        ?? throw new InvalidOperationException("Not inside the repository.");

    public static string File(string path) => Path.Combine(Root, path);

    private static string? Above(string? path) =>
        path is null || System.IO.File.Exists(Path.Combine(path, "PriceFloor.sln")) ? path : Above(Path.GetDirectoryName(path));

    private static string ThisFile([CallerFilePath] string path = "") => path;
}
