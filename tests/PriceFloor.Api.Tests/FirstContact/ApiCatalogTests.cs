using Xunit;

namespace PriceFloor.Api.Tests.FirstContact;

/// <summary>RFC 9727: a set of links (RFC 9264) at a well-known address.</summary>
public sealed class ApiCatalogTests
{
    [Fact]
    public async Task Programs_find_the_interface_its_description_its_pages_and_its_health()
    {
        await using var studio = new Studio();
        var answer = await studio.Get("/.well-known/api-catalog", studio.ClientWith(null));
        Assert.Equal("""application/linkset+json; profile="https://www.rfc-editor.org/info/rfc9727" """.TrimEnd(), answer["Content-Type"]);
        Assert.Equal(
            """{"linkset":[{"anchor":"http://localhost/.well-known/api-catalog","item":[{"href":"http://localhost/v1"}]},{"anchor":"http://localhost/v1","service-desc":[{"href":"http://localhost/openapi/v1.json","type":"application/json"},{"href":"http://localhost/openapi/v1.yaml","type":"application/yaml"}],"service-doc":[{"href":"http://localhost/docs","type":"text/html"}],"status":[{"href":"http://localhost/health/ready","type":"application/json"}]}]}""",
            answer.Text);
    }

    [Fact]
    public async Task HEAD_has_the_link_that_the_standard_asks_for()
    {
        await using var studio = new Studio();
        var head = await studio.Send("HEAD", "/.well-known/api-catalog", null, studio.ClientWith(null));
        Assert.Equal((200, "", "<http://localhost/.well-known/api-catalog>; rel=\"api-catalog\""), (head.Status, head.Text, head["Link"]));
    }
}
