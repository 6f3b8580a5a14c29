using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.OpenApi;

/// <summary>One answer of each problem type, as the tests provoke it.</summary>
public static class ProblemExamples
{
    public static IReadOnlyDictionary<string, string> All { get; } = new Dictionary<string, string>
    {
        ["busy"] =
            """{"type":"/problems/busy","title":"The store cannot be used just now","status":503,"detail":"The store is locked, read-only, full, damaged, or just being brought up to date. Nothing was half done.","requestId":"0192f3a4b5c67d8e9fa0b1c2d3e4f506"}""",
        ["cannot-compute"] =
            """{"type":"/problems/cannot-compute","title":"There is no answer","status":422,"detail":"No price up to 10^12 would be enough on this channel; check its fees and the design's bench time and materials.","reason":"no-price","requestId":"0192f3a4b5c67d8e9fa0b1c2d3e4f506"}""",
        ["currency-mismatch"] =
            """{"type":"/problems/currency-mismatch","title":"Two currencies meet","status":422,"detail":"The channel \"web\" sells in USD, the price is in EUR; nothing is ever converted.","requestId":"0192f3a4b5c67d8e9fa0b1c2d3e4f506"}""",
        ["in-use"] =
            """{"type":"/problems/in-use","title":"Something else depends on it","status":409,"detail":"The profile \"main\" is still used.","usedBy":[{"kind":"design","key":"RB-014"}],"requestId":"0192f3a4b5c67d8e9fa0b1c2d3e4f506"}""",
        ["damaged-document"] =
            """{"type":"/problems/damaged-document","title":"A stored document is damaged","status":503,"detail":"The stored profile \"damaged\" (revision 1) is damaged, so nothing is computed from it.","requestId":"0192f3a4b5c67d8e9fa0b1c2d3e4f506"}""",
        ["internal"] =
            """{"type":"/problems/internal","title":"A fault of the service","status":500,"detail":"Something went wrong that should not. It is not the caller's doing; nothing was half done.","requestId":"0192f3a4b5c67d8e9fa0b1c2d3e4f506"}""",
        ["invalid-input"] =
            """{"type":"/problems/invalid-input","title":"A value breaks a rule","status":422,"detail":"2 values break a rule; errors lists each.","errors":[{"pointer":"#/calendar","code":"required","detail":"calendar is missing."},{"pointer":"#/currency","code":"required","detail":"currency is missing."}],"requestId":"0192f3a4b5c67d8e9fa0b1c2d3e4f506"}""",
        ["key-not-allowed"] =
            """{"type":"/problems/key-not-allowed","title":"The key does not allow this","status":403,"detail":"This call needs a key with the scope \"read\".","requestId":"0192f3a4b5c67d8e9fa0b1c2d3e4f506"}""",
        ["media-type"] =
            """{"type":"/problems/media-type","title":"The body's format is not read here","status":415,"detail":"Send JSON with the header \"Content-Type: application/json\" (UTF-8).","requestId":"0192f3a4b5c67d8e9fa0b1c2d3e4f506"}""",
        ["method-not-allowed"] =
            """{"type":"/problems/method-not-allowed","title":"The address does not take this method","status":405,"detail":"The address exists, but not with this HTTP method.","requestId":"0192f3a4b5c67d8e9fa0b1c2d3e4f506"}""",
        ["no-key"] =
            """{"type":"/problems/no-key","title":"A key is needed","status":401,"detail":"The request has no key; send the header \"Authorization: Bearer pf_...\".","requestId":"0192f3a4b5c67d8e9fa0b1c2d3e4f506"}""",
        ["not-acceptable"] =
            """{"type":"/problems/not-acceptable","title":"No answer in that format","status":406,"detail":"This address answers application/json.","requestId":"0192f3a4b5c67d8e9fa0b1c2d3e4f506"}""",
        ["not-found"] =
            """{"type":"/problems/not-found","title":"Nothing is there","status":404,"detail":"There is no profile \"none\".","requestId":"0192f3a4b5c67d8e9fa0b1c2d3e4f506"}""",
        ["stale-revision"] =
            """{"type":"/problems/stale-revision","title":"It has changed meanwhile","status":412,"detail":"The present revision is 1.","currentRevision":1,"requestId":"0192f3a4b5c67d8e9fa0b1c2d3e4f506"}""",
        ["too-large"] =
            """{"type":"/problems/too-large","title":"The body is too large","status":413,"detail":"The body is larger than 2097152 bytes.","requestId":"0192f3a4b5c67d8e9fa0b1c2d3e4f506"}""",
        ["too-many-requests"] =
            """{"type":"/problems/too-many-requests","title":"Too many requests","status":429,"detail":"Wait 60 seconds.","requestId":"0192f3a4b5c67d8e9fa0b1c2d3e4f506"}""",
        ["unknown-reference"] =
            """{"type":"/problems/unknown-reference","title":"It names something that does not exist","status":422,"detail":"There is no channel \"y\"; case counts.","errors":[{"parameter":"channel","code":"unknown-channel","detail":"There is no channel \"y\"; case counts."},{"parameter":"sku","code":"unknown-design","detail":"There is no design \"x\"; case counts."}],"requestId":"0192f3a4b5c67d8e9fa0b1c2d3e4f506"}""",
        ["unreadable-request"] =
            """{"type":"/problems/unreadable-request","title":"The request cannot be read","status":400,"detail":"The body is not JSON here: check for a missing or extra comma, quote or bracket, a comment, or text after the end.","errors":[{"pointer":"#","code":"malformed","detail":"The body is not JSON here: check for a missing or extra comma, quote or bracket, a comment, or text after the end.","line":1,"column":2}],"requestId":"0192f3a4b5c67d8e9fa0b1c2d3e4f506"}""",
    };

    /// <summary>Puts what is referred to into the document.</summary>
    public static void Define(OpenApiDocument document)
    {
        var used = (from response in HeaderText.Responses(document)
                    where response.Content is not null
                    from media in response.Content!.Values
                    where media.Examples is not null
                    from example in media.Examples!.Values.OfType<OpenApiExampleReference>()
                    select example.Reference.Id!).ToHashSet();
        document.Components!.Examples = ProblemTypes.All.Where(type => used.Contains(type.Slug)).OrderBy(type => type.Slug, StringComparer.Ordinal)
            .ToDictionary(type => type.Slug, type => (IOpenApiExample)new OpenApiExample
            {
                Summary = type.Title,
                Value = JsonNode.Parse(All[type.Slug]),
            });
    }
}
