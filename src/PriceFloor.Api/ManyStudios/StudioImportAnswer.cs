using PriceFloor.Api.Http;

namespace PriceFloor.Api.ManyStudios;

/// <summary>What an import stored.</summary>
public sealed record StudioImportAnswer
{
    /// <summary>Lines of the export before its last.</summary>
    /// <example>812</example>
    [WholeNumber]
    public required decimal Lines { get; init; }

    /// <summary>Documents that the studio has now.</summary>
    /// <example>230</example>
    [WholeNumber]
    public required decimal Documents { get; init; }
}
