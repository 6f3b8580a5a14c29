using System.Security.Cryptography;
using PriceFloor.Statements;
using PriceFloor.Storage;

namespace PriceFloor.Api.OpenApi;

/// <summary>
/// The contract in files, as the build leaves it beside the program (BakeContract.targets). One file says from which build the others are, so what
/// was left from another build is never served.
/// </summary>
/// <param name="Folder">The folder of the files.</param>
public sealed record BakedContract(string Folder)
{
    private const string Json = "v1.json";
    private const string Yaml = "v1.yaml";
    private const string Build = "v1.build";

    /// <summary>Everything that the contract is written from. A change of a comment changes the id too.</summary>
    private static readonly Type[] s_sources = [typeof(BakedContract), typeof(CostProfile), typeof(ProfileDraft), typeof(Store)];

    public static BakedContract BesideTheProgram { get; } = new(Path.Combine(AppContext.BaseDirectory, "openapi"));

    /// <summary>The contract inside the program: the downloaded one is a single file, so nothing is beside it. Null in every other program.</summary>
    public static ContractTexts? InsideTheProgram() =>
        Resource(Json) is { } json && Resource(Yaml) is { } yaml ? new ContractTexts(json, yaml) : null;

    /// <summary>Writes the files, the one that vouches for the others last.</summary>
    public void Write(ContractTexts texts)
    {
        Directory.CreateDirectory(Folder);
        File.WriteAllBytes(At(Json), texts.Json);
        File.WriteAllBytes(At(Yaml), texts.Yaml);
        File.WriteAllText(At(Build), SealOf(texts));
    }

    /// <summary>The contract of this very build; null if a file is missing, cannot be read, was changed or is of another build.</summary>
    public ContractTexts? Read()
    {
        try
        {
            var texts = new ContractTexts(File.ReadAllBytes(At(Json)), File.ReadAllBytes(At(Yaml)));
            return File.ReadAllText(At(Build)) == SealOf(texts) ? texts : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static byte[]? Resource(string file)
    {
        using var stream = typeof(BakedContract).Assembly.GetManifestResourceStream($"openapi/{file}");
        if (stream is null)
            return null;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    private static string SealOf(ContractTexts texts) => string.Concat(
        s_sources.Select(type => $"{type.Module.ModuleVersionId} {type.Assembly.GetName().Name}\n")
            .Append($"{Convert.ToHexStringLower(SHA256.HashData(texts.Json))} {Json}\n")
            .Append($"{Convert.ToHexStringLower(SHA256.HashData(texts.Yaml))} {Yaml}\n"));

    private string At(string file) => Path.Combine(Folder, file);
}
