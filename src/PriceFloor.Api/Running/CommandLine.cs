using PriceFloor.Api.Configuration;

namespace PriceFloor.Api.Running;

/// <summary>The command line, read completely before anything starts: a mistyped word must neither start a service nor make a store.</summary>
/// <param name="Verb">What to do; <see cref="Commands.Serve"/> if none is named.</param>
/// <param name="Words">The arguments of the verb.</param>
/// <param name="Demo">Fill an empty store with the invented studio.</param>
/// <param name="HostArguments">The options that the web host and the settings read themselves.</param>
public sealed record CommandLine(string Verb, IReadOnlyList<string> Words, bool Demo, string[] HostArguments)
{
    private const string SeeHelp = "; --help lists them all. Nothing was started.";

    /// <summary>Options of the web host, each with a value.</summary>
    private static readonly string[] s_hostOptions = ["urls", "http_ports", "environment", "contentRoot", "applicationName"];

    /// <summary>Sections of the configuration that the command line may set, as in --Serilog:MinimumLevel:Default=Debug.</summary>
    private static readonly string[] s_sections = ["Serilog", "Kestrel"];

    public static CommandLine Of(IReadOnlyList<string> arguments)
    {
        var (words, host, demo) = (new List<string>(), new List<string>(), false);
        for (var i = 0; i < arguments.Count; i++)
        {
            var argument = arguments[i];
            if (argument is "--help" or "-h")
                return new CommandLine(Commands.Help, [], false, []);
            if (argument == "--version")
                return new CommandLine(Commands.Version, [], false, []);
            if (argument == "--demo")
                demo = true;
            else if (argument.StartsWith('-'))
                host.Add(HostOption(argument, arguments.ElementAtOrDefault(argument.Contains('=', StringComparison.Ordinal) ? i : ++i)));
            else
                words.Add(argument);
        }

        return new CommandLine(VerbIn(words, demo || host.Count > 0), [.. words.Skip(1)], demo, [.. host]);
    }

    /// <summary>An option with its value, as --NAME=VALUE.</summary>
    private static string HostOption(string argument, string? next)
    {
        var name = argument.TrimStart('-').Split('=')[0];
        if (!argument.StartsWith("--", StringComparison.Ordinal) || !IsKnown(name))
            throw new SettingsException($"\"{argument.Split('=')[0]}\" is not an option of this program{SeeHelp}");
        return argument.Contains('=', StringComparison.Ordinal) ? argument
            : $"{argument}={next ?? throw new SettingsException($"\"{argument}\" needs a value: write {argument}=VALUE.")}";
    }

    private static bool IsKnown(string name) => s_hostOptions.Contains(name, StringComparer.OrdinalIgnoreCase) || Settings.Names.ContainsKey(name)
        || s_sections.Contains(name.Split(':')[0], StringComparer.OrdinalIgnoreCase);

    private static string VerbIn(List<string> words, bool hasOptions)
    {
        if (words.Count == 0)
            return Commands.Serve;
        if (!Commands.All.TryGetValue(words[0], out var takes))
            throw new SettingsException($"\"{words[0]}\" is not a verb of this program{SeeHelp}");
        if (words.Count - 1 != takes.Words.Length)
            throw new SettingsException($"Write it like this: {string.Join(' ', [words[0], .. takes.Words])}");
        if (hasOptions)
            throw new SettingsException($"The verb \"{words[0]}\" takes no options; set PRICEFLOOR_DATA and the others in the environment.");
        return words[0];
    }
}
