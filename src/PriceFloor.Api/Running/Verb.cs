namespace PriceFloor.Api.Running;

/// <summary>Something that the program does, by its name on the command line.</summary>
/// <param name="Words">What must follow the word.</param>
/// <param name="Does">What it does, in one line.</param>
public sealed record Verb(string[] Words, string Does)
{
    /// <summary>What may follow after that.</summary>
    public string[] More { get; init; } = [];

    public IReadOnlyList<VerbOption> Options { get; init; } = [];

    /// <summary>What its help says besides.</summary>
    public string Note { get; init; } = "It ends with 0, or with 1 after one sentence that says what is wrong.";

    /// <summary>The exit code if it cannot do its work.</summary>
    public int FaultCode { get; init; } = 1;

    /// <summary>Whether it starts the service, so the options of the web host and the settings may follow.</summary>
    public bool Serves { get; init; }

    /// <summary>How it is written, with the name of the verb.</summary>
    public string Usage(string name) => string.Join(' ', [name, .. Words, .. More.Select(word => $"[{word}]")]);
}

/// <summary>An option of a verb.</summary>
/// <param name="Name">Its name, without dashes.</param>
/// <param name="Value">What follows it; null if it stands alone.</param>
/// <param name="Does">What it does.</param>
public sealed record VerbOption(string Name, string? Value, string Does)
{
    /// <summary>The folder of the store, for every verb that uses one.</summary>
    public static readonly VerbOption Data = new("data", "FOLDER", "the folder of the store, as PRICEFLOOR_DATA in the environment");

    /// <summary>How it is written.</summary>
    public string Usage => Value is null ? $"--{Name}" : $"--{Name} {Value}";
}
