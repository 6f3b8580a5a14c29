using System.Text;
using System.Text.RegularExpressions;
using PriceFloor.Api.OpenApi.Reading;
using PriceFloor.Api.Tests.Contract;
using PriceFloor.Api.Tests.Conventions;
using Xunit;

namespace PriceFloor.Api.Tests.OpenApi.Reading;

/// <summary>The page of the contract has everything that the contract has. It is left in artifacts for `.ci/pictures` to look at.</summary>
public sealed class ContractPageTests
{
    [Fact]
    public async Task Every_call_parameter_and_body_of_the_contract_is_on_the_page_and_every_link_leads_to_a_part_of_it()
    {
        await using var studio = new Studio();
        var contract = await ContractDocument.Of(studio);
        var page = (await studio.Get("/docs", studio.ClientWith(null))).Text;
        Directory.CreateDirectory(Repository.File("artifacts"));
        await File.WriteAllTextAsync(Repository.File("artifacts/contract.html"), page, TestContext.Current.CancellationToken);
        var parts = Found(page, " id=\"([^\"]+)\"");
        Assert.Equal(parts.Count, parts.Distinct().Count());
        Assert.All(contract.Operations, one => Assert.Contains(one.Operation["operationId"]!.GetValue<string>(), parts));
        Assert.All(contract.Root["components"]!["schemas"]!.AsObject(), one => Assert.Contains("body-" + one.Key, parts));
        foreach (var (path, _, operation) in contract.Operations)
        {
            var id = operation["operationId"]!.GetValue<string>();
            var call = page[page.IndexOf($"<details id=\"{id}\"", StringComparison.Ordinal)..];
            call = call[..call.IndexOf("</details>", StringComparison.Ordinal)];
            Assert.Contains($"<code>{path}</code>", call, StringComparison.Ordinal);
            Assert.Contains("curl -s", call, StringComparison.Ordinal);
            foreach (var parameter in operation["parameters"]?.AsArray().Where(one => one!["$ref"] is null) ?? [])
                Assert.Contains($"<dt><code>{parameter!["name"]}</code>", call, StringComparison.Ordinal);
        }

        var links = Found(page, " href=\"#([^\"]+)\"");
        Assert.Empty(links.Except(parts));
        Assert.True(links.Count > 100);
    }

    [Fact]
    public void What_the_contract_says_is_text_and_not_markup()
    {
        var page = Encoding.UTF8.GetString(ContractPage.Of(Encoding.UTF8.GetBytes("""
            {"info":{"title":"A <b>","version":"1","summary":"`<i>` & more","description":""},"tags":[{"name":"One","description":"<script>"}],
            "components":{"schemas":{"Thing":{"type":"object","properties":{"a":{"type":"string","description":"\"><img src=x>"}}}}},
            "paths":{"/v1/<x>":{"get":{"operationId":"get","tags":["One"],"summary":"<s>","description":"","responses":{"200":{"description":"<u>",
            "content":{"text/csv":{"example":"<a>,b"}}}}}}}}
            """)));
        Assert.Contains("<code>&lt;i&gt;</code> &amp; more", page, StringComparison.Ordinal);
        Assert.Contains("<pre>&lt;a&gt;,b</pre>", page, StringComparison.Ordinal);
        foreach (var markup in new[] { "<script", "<img", "<s>", "<u>", "<x>", "A <b>" })
            Assert.DoesNotContain(markup, page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task With_a_slash_at_the_end_it_moves_so_that_its_links_lead_somewhere()
    {
        await using var studio = new Studio();
        var moved = await studio.Get("/docs/");
        Assert.Equal((301, "/docs"), (moved.Status, moved["Location"]));
        foreach (var link in new[] { "/openapi/v1.json", "/openapi/v1.yaml", "/problems" })
            Assert.Equal(200, (await studio.Get(link, studio.ClientWith(null))).Status);
    }

    private static List<string> Found(string page, string pattern) =>
        [.. Regex.Matches(page, pattern, RegexOptions.None, TimeSpan.FromSeconds(5)).Select(match => match.Groups[1].Value)];
}
