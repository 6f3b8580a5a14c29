using System.Text.RegularExpressions;
using PriceFloor.Api.Tests.Conventions;

namespace PriceFloor.Api.Tests.Contract;

/// <summary>The body of a request in http-examples or in a page's curl command, and what stands above it: the example that it is a copy of.</summary>
/// <param name="Page">The file, from the root of the repository.</param>
/// <param name="Says">After "Body: ": the example's file, or why the body is only there; null if nothing is said.</param>
/// <param name="At">Where the body begins in the page.</param>
public sealed partial record WrittenBody(string Page, string? Says, string Text, int At)
{
    /// <summary>What a body says that is no copy.</summary>
    public const string OnlyHere = "only here: ";

    /// <summary>Every body, page by page, in order.</summary>
    public static IReadOnlyList<WrittenBody> All { get; } = [.. Of("http-examples", "*.http", InHttpFile()),
        .. Of("docs", "*.md", InCommand()), .. In(Repository.File("README.md"), InCommand())];

    /// <summary>The name of the example's file, from the root of the repository; null if the body is no copy.</summary>
    public string? Example => Says is null || Says.StartsWith(OnlyHere, StringComparison.Ordinal) ? null : $"src/PriceFloor.Api/{Says}";

    private static IEnumerable<WrittenBody> Of(string folder, string pattern, Regex bodies) =>
        Directory.EnumerateFiles(Repository.File(folder), pattern, SearchOption.AllDirectories).Order(StringComparer.Ordinal)
            .SelectMany(file => In(file, bodies));

    private static IEnumerable<WrittenBody> In(string file, Regex bodies) =>
        from Match match in bodies.Matches(File.ReadAllText(file))
        let says = match.Groups["says"]
        let body = match.Groups["body"]
        select new WrittenBody(Path.GetRelativePath(Repository.Root, file).Replace('\\', '/'), says.Success ? says.Value : null,
            body.Value, body.Index);

    /// <summary>Below the title, the comments, the request line, the headers and an empty line; before the check.</summary>
    [GeneratedRegex(@"^### .+\n(?:# (?:Body: (?<says>.+)|.+)\n)*[A-Z]+ .+\n(?:[A-Za-z-]+: .+\n)*\n(?<body>[^>\s][\s\S]*?)\n\n> \{%",
        RegexOptions.Multiline | RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex InHttpFile();

    /// <summary>In single quotes after -d or --data-binary, in a block that a comment may stand above.</summary>
    [GeneratedRegex(@"(?:<!-- Body: (?<says>.+) -->\n)?^```sh\ncurl (?:(?!```)[\s\S])*?(?:-d|--data-binary) '(?<body>[^']*)'",
        RegexOptions.Multiline | RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex InCommand();
}
