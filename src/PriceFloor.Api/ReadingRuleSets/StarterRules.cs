using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.ReadingRuleSets;

/// <summary>Reading rules in general words to begin with: the maker stores them and puts rules for their own payees before them.</summary>
public static class StarterRules
{
    private static readonly Lazy<TaggedBody> s_body = new(() =>
    {
        using var stream = typeof(StarterRules).Assembly.GetManifestResourceStream(typeof(StarterRules), "starter-rules.json")!;
        using var memory = new MemoryStream();
        stream.CopyTo(memory);
        return TaggedBody.Of(memory.ToArray());
    });

    /// <summary>The document, as it can be stored.</summary>
    public static byte[] Json => s_body.Value.Body;

    public static IResult Get(HttpContext context) => s_body.Value.Answer(context, Format.Json);
}
