using System.Text.RegularExpressions;
using PriceFloor.Api.Tests.Conventions;

namespace PriceFloor.Api.Tests.DocCommands;

/// <summary>What the Dockerfile promises to whoever starts its image.</summary>
public static class ContainerFiles
{
    /// <summary>The image's name in the docs and the compose file.</summary>
    public const string Image = "pricefloor";

    public const string VolumeName = "pricefloor-data";

    public static string Dockerfile { get; } = File.ReadAllText(Repository.File("Dockerfile")).Replace("\\\n", " ", StringComparison.Ordinal);

    public static string Volume { get; } = Told("^VOLUME (?<told>.+)$");

    public static string Port { get; } = Told("^EXPOSE (?<told>[0-9]+)$");

    public static IReadOnlyList<string> EntryPoint { get; } = Words(Told("^ENTRYPOINT (?<told>.+)$"));

    public static IReadOnlyList<string> HealthCheck { get; } = Words(Told("^HEALTHCHECK .*CMD (?<told>.+)$"));

    public static IReadOnlyDictionary<string, string> Environment { get; } = Regex
        .Matches(Told("^ENV (?<told>.+)$"), "(?<name>[A-Za-z_]+)=(?<value>\\S*)", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1))
        .ToDictionary(match => match.Groups["name"].Value, match => match.Groups["value"].Value);

    private static string Told(string pattern) =>
        Regex.Match(Dockerfile, pattern, RegexOptions.Multiline | RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1)) is { Success: true } match
            ? match.Groups["told"].Value.Trim() : throw new InvalidOperationException($"The Dockerfile has no line {pattern}.");

    private static string[] Words(string json) => System.Text.Json.JsonSerializer.Deserialize<string[]>(json)!;
}
