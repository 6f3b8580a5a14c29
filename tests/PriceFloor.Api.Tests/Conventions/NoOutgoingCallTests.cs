using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using PriceFloor.Storage;
using Xunit;

namespace PriceFloor.Api.Tests.Conventions;

/// <summary>The service follows no address that somebody gave it, because it makes no calls at all.</summary>
public sealed class NoOutgoingCallTests
{
    [Theory]
    [InlineData(typeof(Program), new[] { "HttpClient", "HttpRequestException", "HttpResponseMessage" })] // the health check asks the service itself
    [InlineData(typeof(Store), new string[0])]
    [InlineData(typeof(StudioYear), new string[0])]
    public void No_type_that_opens_connections_is_used(Type inside, string[] allowed) =>
        Assert.Equal(allowed, ConnectingTypesIn(inside).Order(StringComparer.Ordinal));

    [Fact]
    public void The_one_call_that_there_is_goes_to_the_service_itself()
    {
        var sources = Directory.EnumerateFiles(Repository.File("src"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal));
        Assert.Equal("HealthCheck.cs",
            Path.GetFileName(Assert.Single(sources, file => File.ReadAllText(file).Contains("new HttpClient", StringComparison.Ordinal))));
    }

    private static IEnumerable<string> ConnectingTypesIn(Type inside)
    {
        using var file = File.OpenRead(inside.Assembly.Location);
        using var image = new PEReader(file);
        var metadata = image.GetMetadataReader();
        return [.. metadata.TypeReferences.Select(metadata.GetTypeReference)
            .Where(type => metadata.GetString(type.Namespace) is "System.Net.Http" or "System.Net.Sockets" or "System.Net.WebSockets"
                or "System.Net.Mail" or "System.Net.NetworkInformation")
            .Select(type => metadata.GetString(type.Name))
            .Where(name => name is not ("AddressFamily" or "HttpMethod" or "SocketError" or "SocketException"))];
    }
}
