using System.Text;
using System.Text.RegularExpressions;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.Swagger;

namespace PriceFloor.Api.OpenApi;

/// <summary>The contract in its two formats, in the bytes that are served.</summary>
public sealed partial record ContractTexts(byte[] Json, byte[] Yaml)
{
    /// <summary>Written from the code, which takes half a second and 50 MiB.</summary>
    public static async Task<ContractTexts> WrittenBy(IServiceProvider services)
    {
        await using var writers = OpenApiSetup.WritersOf(services);
        var document = writers.GetRequiredService<ISwaggerProvider>().GetSwagger(OpenApiSetup.DocumentName);
        return new ContractTexts(
            Encoding.UTF8.GetBytes(await document.SerializeAsJsonAsync(OpenApiSpecVersion.OpenApi3_1)),
            Encoding.UTF8.GetBytes(await document.SerializeAsYamlAsync(OpenApiSpecVersion.OpenApi3_1)));
    }

    /// <summary>
    /// The contract of a service at the root as that of one below a path: the address of the server is all that depends on settings. Null if the path
    /// has letters that JSON or YAML might write in another way.
    /// </summary>
    /// <param name="pathBase">Without a slash at its end; empty for the root.</param>
    public ContractTexts? Below(string pathBase) =>
        pathBase.Length == 0 ? this
        : !PlainPath().IsMatch(pathBase) ? null
        : new ContractTexts(With(pathBase, Json, "\"url\": \"/"), With(pathBase, Yaml, "url: /"));

    /// <param name="before">What stands before the server's address without its last slash: the first address in the document.</param>
    private static byte[] With(string pathBase, byte[] text, string before)
    {
        var at = text.AsSpan().IndexOf(Encoding.UTF8.GetBytes(before)) + before.Length - 1;
        return [.. text.AsSpan(0, at), .. Encoding.UTF8.GetBytes(pathBase), .. text.AsSpan(at)];
    }

    [GeneratedRegex("^[A-Za-z0-9/._~-]+$", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex PlainPath();
}
