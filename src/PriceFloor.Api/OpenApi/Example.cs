namespace PriceFloor.Api.OpenApi;

/// <summary>
/// A request that works, or the answer to one: a file embedded in the program. It is read only when the contract is written, so it costs the start of
/// the service nothing. A test sends the requests and compares the answers.
/// </summary>
/// <param name="Feature">A type of the folder that has the file in its folder Examples.</param>
/// <param name="File">The name of the file.</param>
public sealed record Example(Type Feature, string File)
{
    /// <summary>True if the document in the file is shown as the only one of a page.</summary>
    public bool IsOnAPage { get; private init; }

    /// <summary>Where the file is embedded; the folders are parts of a namespace.</summary>
    public string Resource => $"{Feature.Namespace}.Examples.{File}";

    /// <summary>What is sent or answered.</summary>
    public string Text => IsOnAPage ? $$"""{"items":[{{Read()}}],"next":null}""" : Read();

    /// <summary>The same document as a page of it alone.</summary>
    public Example OnAPage() => this with { IsOnAPage = true };

    private string Read()
    {
        using var stream = Feature.Assembly.GetManifestResourceStream(Resource)
            ?? throw new FileNotFoundException($"No file is embedded as {Resource}.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}

/// <summary>The folder Examples beside a type.</summary>
public sealed record ExampleFolder(Type Feature)
{
    public Example this[string file] => new(Feature, file);
}
