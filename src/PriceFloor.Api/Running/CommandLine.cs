using PriceFloor.Api.Configuration;

namespace PriceFloor.Api.Running;

/// <summary>The command line, read completely before anything starts: a mistyped word must neither start a service nor make a store.</summary>
/// <param name="Verb">What to do; <see cref="Commands.Serve"/> if none is named.</param>
/// <param name="Words">The arguments of the verb.</param>
/// <param name="Demo">Fill an empty store with the invented studio.</param>
/// <param name="HostArguments">The options that the web host and the settings read themselves.</param>
/// <param name="Options">The options of the verb with their values, by name; empty for one that stands alone.</param>
public sealed record CommandLine(string Verb, IReadOnlyList<string> Words, bool Demo, string[] HostArguments,
    IReadOnlyDictionary<string, string> Options)
{
    private const string Data = "PRICEFLOOR_DATA", SeeHelp = "; --help lists them all. Nothing was started.";

    /// <summary>Options of the web host, each with a value.</summary>
    private static readonly string[] s_hostOptions = ["urls", "http_ports", "environment", "contentRoot", "applicationName"];

    /// <summary>Sections of the configuration that the command line may set, as in --Serilog:MinimumLevel:Default=Debug.</summary>
    private static readonly string[] s_sections = ["Serilog", "Kestrel"];

    private static readonly Dictionary<string, string> s_none = [];

    /// <summary>What the settings are read from by a verb that starts no web host: the environment, and --data before it.</summary>
    public IConfiguration Configuration => new ConfigurationBuilder().AddEnvironmentVariables()
        .AddInMemoryCollection(Options.TryGetValue(VerbOption.Data.Name, out var folder) ? [new(Data, folder)] : []).Build();

    /// <param name="arguments">The arguments.</param>
    /// <param name="isDownload">Whether it is the program that is downloaded: without arguments it says what it can do.</param>
    public static CommandLine Of(IReadOnlyList<string> arguments, bool isDownload = false)
    {
        var verb = VerbIn(arguments);
        if (verb == "help")
            return Asked(Commands.Help, [.. arguments.Where(argument => argument != verb && Commands.All.ContainsKey(argument)).Take(1)]);
        if (verb is not null && !Commands.All.ContainsKey(verb))
            throw new SettingsException($"\"{verb}\" is not a verb of this program{Commands.HintOf(verb)}{SeeHelp}");
        if ((arguments.Count == 0 && isDownload) || arguments.Any(argument => argument is "--help" or "-h"))
            return Asked(Commands.Help, verb is null ? [] : [verb]);
        return arguments.Contains("--version") ? Asked(Commands.Version, []) : Told(arguments, verb ?? Commands.Serve);
    }

    /// <summary>The first argument that is neither an option nor the value of one; null if there is none.</summary>
    public static string? VerbIn(IReadOnlyList<string> arguments)
    {
        for (var i = 0; i < arguments.Count; i++)
            if (!arguments[i].StartsWith('-'))
                return arguments[i];
            else if (TakesValue(arguments[i]))
                i++;
        return null;
    }

    private static CommandLine Asked(string what, string[] words) => new(what, words, false, [], s_none);

    private static CommandLine Told(IReadOnlyList<string> arguments, string name)
    {
        var verb = Commands.All[name];
        var (words, host, options) = (new List<string>(), new List<string>(), new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase));
        for (var i = 0; i < arguments.Count; i++)
        {
            var argument = arguments[i];
            if (!argument.StartsWith('-'))
                words.Add(argument);
            else if (verb.Serves && argument == "--demo")
                name = Commands.Demo;
            else if (OptionOf(verb, argument) is { } option)
                options[option.Name] = option.Value is null ? "" : ValueOf(argument, Next());
            else if (verb.Serves)
                host.Add(HostOption(argument, Next()));
            else
                throw NotAnOption(argument, name, verb);

            string? Next() => argument.Contains('=', StringComparison.Ordinal) ? null : arguments.ElementAtOrDefault(++i);
        }

        if (words.Count > 0 && (words.Count - 1 < verb.Words.Length || words.Count - 1 > verb.Words.Length + verb.More.Length))
            throw new SettingsException($"Write it like this: {verb.Usage(words[0])}");
        if (verb.Serves && options.TryGetValue(VerbOption.Data.Name, out var folder))
            host.Add($"--{Data}={folder}");
        return new CommandLine(verb.Serves ? Commands.Serve : name, [.. words.Skip(1)], name == Commands.Demo, [.. host], options);
    }

    /// <summary>Whether the next argument belongs to this option.</summary>
    private static bool TakesValue(string argument) => !argument.Contains('=', StringComparison.Ordinal)
        && argument is not ("--demo" or "--help" or "-h" or "--version") && (IsKnown(argument.TrimStart('-'))
            || Commands.All.Values.SelectMany(verb => verb.Options).Any(option => option.Value is not null && IsNamed(option, argument)));

    private static VerbOption? OptionOf(Verb verb, string argument) => verb.Options.FirstOrDefault(option => IsNamed(option, argument));

    private static bool IsNamed(VerbOption option, string argument) =>
        argument.Split('=')[0].Equals($"--{option.Name}", StringComparison.OrdinalIgnoreCase);

    private static string ValueOf(string argument, string? next)
    {
        var at = argument.IndexOf('=', StringComparison.Ordinal);
        return at >= 0 ? argument[(at + 1)..] : next ?? throw new SettingsException($"\"{argument}\" needs a value: write {argument}=VALUE.");
    }

    /// <summary>An option with its value, as --NAME=VALUE.</summary>
    private static string HostOption(string argument, string? next)
    {
        var name = argument.TrimStart('-').Split('=')[0];
        if (!argument.StartsWith("--", StringComparison.Ordinal) || !IsKnown(name))
            throw new SettingsException($"\"{argument.Split('=')[0]}\" is not an option of this program{NearOption(name)}{SeeHelp}");
        return $"--{name}={ValueOf(argument, next)}";
    }

    private static bool IsKnown(string name) => s_hostOptions.Contains(name, StringComparer.OrdinalIgnoreCase) || Settings.Names.ContainsKey(name)
        || s_sections.Contains(name.Split(':')[0], StringComparer.OrdinalIgnoreCase);

    private static string NearOption(string name) =>
        NearestName.Of(name, [.. s_hostOptions, .. Settings.Names.Keys, "demo", VerbOption.Data.Name, "help", "version"]) is { } near
            ? $", but there is \"--{near}\"" : "";

    private static SettingsException NotAnOption(string argument, string name, Verb verb)
    {
        var typed = argument.Split('=')[0];
        return new SettingsException($"\"{typed}\" is not an option of the verb \"{name}\""
            + (verb.Options.Count == 0 ? ", which takes none; set PRICEFLOOR_DATA and the others in the environment."
                : $"{NearestName.Hint(typed.TrimStart('-'), [.. verb.Options.Select(option => option.Name)])}. Nothing was started."));
    }
}
