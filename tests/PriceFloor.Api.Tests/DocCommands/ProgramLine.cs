using System.Text.RegularExpressions;
using PriceFloor.Api.Running;

namespace PriceFloor.Api.Tests.DocCommands;

/// <summary>A line that starts our program, in any form: by dotnet, in a container, as the downloaded program, or as a verb alone.</summary>
/// <param name="Arguments">The arguments of the program.</param>
public sealed partial record ProgramLine(string Line, IReadOnlyList<string> Arguments)
{
    public static readonly IReadOnlyList<string> Commands = [.. PriceFloor.Api.Running.Commands.All.Keys];

    /// <summary>The verbs that may run beside a service.</summary>
    private static readonly string[] s_beside = [PriceFloor.Api.Running.Commands.HealthCheck, PriceFloor.Api.Running.Commands.OpenApi,
        StoreCommands.Backup, StoreCommands.CheckStore, QuestionCommands.Check, QuestionCommands.Floor];

    public string? Verb => Arguments.FirstOrDefault(argument => !argument.StartsWith('-'));

    public bool RunsBeside => s_beside.Contains(Verb);

    /// <summary>Whether it starts the service.</summary>
    public bool Serves => Verb is null || PriceFloor.Api.Running.Commands.All[Verb].Serves;

    /// <summary>The line's arguments; null if it does not start our program, or only names a verb that needs words after it.</summary>
    public static ProgramLine? Of(string line)
    {
        var match = Started().Match(line);
        if (!match.Success && (!Commands.Contains(line.Split(' ')[0])
                || (PriceFloor.Api.Running.Commands.All.TryGetValue(line, out var takes) && takes.Words.Length > 0)))
            return null;
        var arguments = match.Success ? match.Groups["arguments"].Value : line;
        return new ProgramLine(line, arguments.Split(" > ")[0].Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }

    [GeneratedRegex(
        "^((\\./)?pricefloor(?= [a-z])|dotnet PriceFloor\\.Api\\.dll|dotnet run --project src/PriceFloor\\.Api( --)?"
        + "|docker exec CONTAINER dotnet PriceFloor\\.Api\\.dll|docker run (--[a-z-]+ (\\S*[:/]\\S* )?)*pricefloor)(?<arguments>( .*)?)$",
        RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Started();
}
