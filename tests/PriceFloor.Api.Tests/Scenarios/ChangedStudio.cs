using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Changes;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Scenarios;
using PriceFloor.Storage;

namespace PriceFloor.Api.Tests.Scenarios;

/// <summary>Changes to the documents of a studio, as sent, without a request around them.</summary>
internal static class ChangedStudio
{
    /// <summary>The script of changes written as JSON, or its faults.</summary>
    public static Outcome<ChangeScript> Script(this Studio studio, params string[] changes)
    {
        var catalogue = studio.Services.GetRequiredService<CatalogueSource>().SeenBy(ProfileAccess.All).Whole(null).AtOnce();
        return ChangeScript.Of([.. changes.Select(Read)], new ChangeScope(catalogue, catalogue.Profile("main")!));
    }

    /// <summary>The one fault of some changes, as code and pointer.</summary>
    public static string FaultOf(this Studio studio, params string[] changes) =>
        string.Join(", ", studio.Script(changes).Faults.Select(fault => $"{fault.Code} {fault.Pointer}"));

    public static CostProfile Profile(this ChangedDocuments documents) => documents.Find<CostProfile>(Kinds.Profile, "main")!;

    private static DocumentChange Read(string json)
    {
        var utf8 = System.Text.Encoding.UTF8.GetBytes(json);
        Xunit.Assert.Empty(BodyReader.Check(utf8, BodySchema.Of(typeof(DocumentChange))));
        return JsonSerializer.Deserialize<DocumentChange>(utf8, WireJson.Options)!;
    }
}
