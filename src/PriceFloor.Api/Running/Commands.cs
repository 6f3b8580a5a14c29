using PriceFloor.Api.Configuration;

namespace PriceFloor.Api.Running;

/// <summary>What the program can do, verb by verb.</summary>
public static class Commands
{
    public const string Serve = "serve";
    public const string Demo = "demo";
    public const string Help = "--help";
    public const string Version = "--version";
    public const string HealthCheck = "healthcheck";
    public const string OpenApi = "openapi";
    public const string OpenApiFiles = "openapi-files";

    private static readonly VerbOption[] s_data = [VerbOption.Data], s_ofStudio = [VerbOption.Data, StoreCommands.Studio];

    /// <summary>Each verb, its arguments, and what it does.</summary>
    public static readonly IReadOnlyDictionary<string, Verb> All = new Dictionary<string, Verb>
    {
        [Serve] = new([], "serves the store over HTTP until it is stopped") { Serves = true, Options = s_data, Note = ServesNote },
        [Demo] = new([], "serves, and fills an empty store with an invented studio") { Serves = true, Options = s_data, Note = ServesNote },
        [QuestionCommands.Check] = new(["SHEET"], "checks a sheet of prices (CSV) against the floors, also beside a running service")
        {
            Options = SheetCommand.Options,
            Note = SheetCommand.Note,
            FaultCode = QuestionCommands.Fault,
        },
        [QuestionCommands.Floor] = new(["SKU"], "prints the floor of a design and its price on each channel, also beside a running service")
        {
            More = ["CHANNEL"],
            Options = FloorCommand.Options,
            Note = "It ends with 0, or with 2 if there is no answer. Nothing in the data folder is changed.",
            FaultCode = QuestionCommands.Fault,
        },
        [StoreCommands.Backup] = new(["FILE"], "copies the store to a new file, also while a service writes") { Options = s_data },
        [StoreCommands.CheckStore] = new([], "checks the whole store, also while a service runs; exit code 0 or 1") { Options = s_ofStudio },
        [StoreCommands.Restore] =
            new(["FILE"], "checks a backup and puts it in the store's place; the service must be stopped") { Options = s_data },
        [StoreCommands.Forget] =
            new(["KIND", "KEY"], "erases a deleted document with all its revisions; a service on a file must be stopped") { Options = s_ofStudio },
        [StoreCommands.NewAdminKey] =
            new([], "makes a key with every scope, to replace a lost one; a service on a file must be stopped") { Options = s_ofStudio },
        [CopyCommand.Name] = new([], CopyCommand.Does) { Options = [.. CopyCommand.Options, VerbOption.Data], Note = CopyCommand.Note },
        [StoreCommands.Migrate] =
            new([], "makes the store if there is none, and brings it to this program's schema, as the start does") { Options = s_data },
        [HealthCheck] = new([], "asks a running service whether it is ready; exit code 0 or 1"),
        [OpenApi] = new([], "prints the OpenAPI document"),
        [OpenApiFiles] = new(["FOLDER"], "writes it into a folder as the build does, whatever the settings are"),
    };

    private const string ServesNote = "Settings follow as options, such as --PRICEFLOOR_METRICS=on, or are set in the environment.";

    private static readonly (string Option, string Does)[] s_options =
    [
        ("--urls ADDRESS", $"with serve and demo: where to listen; {Addresses.Usual} if not set"),
        ("--PRICEFLOOR_NAME=VALUE", "with serve and demo: a setting, which is usually set in the environment (docs/reference/settings.md)"),
        (VerbOption.Data.Usage, VerbOption.Data.Does),
        (Help, "prints this, and after a verb what the verb takes; also -h"),
        (Version, "prints the version"),
    ];

    /// <summary>Prints the help, that of a verb if one is given, or the version.</summary>
    public static int Tell(string verb, IReadOnlyList<string> words, TextWriter output)
    {
        output.WriteLine(verb != Help ? FirstContact.Welcome.Version : words.Count == 0 ? HelpText() : HelpOf(words[0]));
        return 0;
    }

    /// <summary>What follows the name of a verb that is not there.</summary>
    public static string HintOf(string word) => NearestName.Hint(word, [.. All.Keys]);

    /// <summary>The exit code if what these arguments ask for cannot be done.</summary>
    public static int FaultCode(IReadOnlyList<string> arguments) =>
        CommandLine.VerbIn(arguments) is { } word && All.TryGetValue(word, out var verb) ? verb.FaultCode : 1;

    private static string HelpText() => $"""
        PriceFloor {FirstContact.Welcome.Version}: the lowest price that keeps a studio and its maker going for the year.

        Give it a verb; each verb says more with --help:
        {Lines(All.Select(verb => (verb.Value.Usage(verb.Key), verb.Value.Does)))}

        Options:
        {Lines(s_options)}

        Without a verb the downloaded program prints this. Started by dotnet, as from a clone or in the container, it serves.
        """;

    private static string HelpOf(string name)
    {
        var verb = All[name];
        var options = verb.Options.Select(option => (option.Usage, option.Does));
        return $"{verb.Usage(name)}{(verb.Options.Count > 0 ? " [OPTIONS]" : "")}\n\n{name}: {verb.Does}.\n"
            + (verb.Options.Count > 0 ? $"\nOptions:\n{Lines(verb.Serves ? [.. options, s_options[0]] : options)}\n" : "")
            + $"\n{verb.Note}";
    }

    private static string Lines(IEnumerable<(string Name, string Does)> rows) =>
        string.Join('\n', rows.Select(row => $"  {row.Name,-24} {row.Does}"));
}
