using System.Reflection;
using System.Runtime.InteropServices;
using System.Text.Json.Serialization;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.OpenApi;
using PriceFloor.Storage;

namespace PriceFloor.Api.FirstContact;

/// <summary>The running version, for a bug report or a rollout.</summary>
public sealed record VersionAnswer
{
    /// <summary>The program's version.</summary>
    /// <example>0.1.0</example>
    public required string Version { get; init; }

    /// <summary>The commit that it was built from; absent if the build did not know it.</summary>
    /// <example>9db5fedfc14e44a0b08c94d83102366425631856</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Commit { get; init; }

    /// <summary>The runtime.</summary>
    /// <example>.NET 10.0.0</example>
    public required string Runtime { get; init; }

    /// <summary>The schema of the store.</summary>
    /// <example>5</example>
    public required int Schema { get; init; }

    /// <summary>The version of the contract, which is also in the path.</summary>
    /// <example>1</example>
    public required string Contract { get; init; }

    /// <summary>The version of this program, with the schema of the store that it serves.</summary>
    public static VersionAnswer On(StorePlace store) => store.NewestSchema == Here.Schema ? Here : Here with { Schema = store.NewestSchema };

    /// <summary>The version of this program: it never changes while it runs.</summary>
    public static VersionAnswer Here { get; } =
        Of(typeof(VersionAnswer).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion);

    /// <param name="informational">The version, with the commit after a plus sign if the build knew it.</param>
    public static VersionAnswer Of(string informational) => new()
    {
        Version = informational.Split('+')[0],
        Commit = informational.Split('+', 2) is [_, { Length: > 0 } commit] ? commit : null,
        Runtime = RuntimeInformation.FrameworkDescription,
        Schema = StoreChoice.NewestSchema, // a store of another schema is not served
        Contract = OpenApiSetup.ContractVersion,
    };
}
