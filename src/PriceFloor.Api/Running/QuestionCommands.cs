using System.Globalization;
using System.Text;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Running;

/// <summary>What the program answers from a store without serving it: nothing in the data folder is changed, and a service may run on it.</summary>
public static class QuestionCommands
{
    public const string Check = "check";
    public const string Floor = "floor";

    /// <summary>The exit code if there is no answer, or not a whole one.</summary>
    public const int Fault = 2;

    public static readonly IReadOnlyList<string> All = [Check, Floor];

    /// <summary>The option for the answer as HTTP gives it.</summary>
    internal static readonly VerbOption Json = new("json", null, "prints the answer as JSON, as it comes over HTTP");

    /// <summary>Runs a verb and returns the exit code.</summary>
    public static async Task<int> Run(CommandLine line, Stream output)
    {
        var settings = Settings.Read(line.Configuration, demo: false);
        return line.Verb == Check
            ? await SheetCommand.Run(settings, line.Words[0], line.Options, output)
            : await FloorCommand.Run(settings, line.Words, line.Options, output);
    }

    /// <summary>All documents of now or of a moment, with everything that is in the store.</summary>
    internal static WholeCatalogue Documents(Settings settings, DateTimeOffset? asOf) => settings.Store.Read(async snapshot =>
        WholeCatalogue.Of(asOf is { } moment ? await snapshot.All(Moment.Of(moment)) : await snapshot.NewestSince(0), ProfileAccess.All,
            asOf ?? TimeProvider.System.GetUtcNow()));

    /// <summary>Whoever has the store's file may see all that is in it.</summary>
    internal static DefaultHttpContext Context()
    {
        var context = new DefaultHttpContext { TraceIdentifier = "command-line" };
        context.Features.Set(new Caller("command line", Enum.GetValues<Scope>().ToHashSet()));
        return context;
    }

    /// <summary>A problem as one sentence for each of its faults.</summary>
    internal static SettingsException FaultOf(Problem problem)
    {
        var body = problem.BodyFor(Context());
        return new SettingsException(body.Errors is { Count: > 0 } errors ? string.Join(' ', errors.Select(InWords)) : body.Detail);
    }

    private static string InWords(InputError error) => error.Line is { } at
        ? string.Create(CultureInfo.InvariantCulture, $"Line {at}, column {error.Column}: {error.Detail}")
        : error.Detail;

    /// <summary>Text in UTF-8 without a mark.</summary>
    internal static StreamWriter TextTo(Stream output) => new(output, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), leaveOpen: true);
}
