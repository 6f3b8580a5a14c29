using PriceFloor.Api.Access;
using PriceFloor.Api.FirstContact;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Running;

/// <summary>The descriptions of these addresses. They are here because the OpenAPI writer uses their folders.</summary>
public static class FirstContactOperations
{
    private static readonly ExampleFolder s_files = new(typeof(FirstContactOperations));

    public static readonly Operation Welcome = new("getWelcome", "First contact", "What this is and where to read on",
        "Name, version and the addresses to begin with; a browser gets the same as a page. Needs no key.")
    {
        Answer = typeof(WelcomeAnswer),
        AnswerExample = s_files["getWelcome.answer.json"],
        OtherAnswers = [new(Format.Html, null, s_files["getWelcome.answer.html"])],
    };

    private static readonly Operation Version = new("getVersion", "Health", "What runs here",
        "The program's version and commit, the runtime, the schema of the store and the version of the contract. Scope: any key.")
    { Answer = typeof(FirstContact.VersionAnswer), AnswerExample = s_files["getVersion.answer.json"] };

    public static void MapFirstContact(this RouteGroupBuilder v1)
    {
        v1.MapGet("/version", VersionRoutes.Get).NeedsAnyKey().Tell(Version);
    }
}
