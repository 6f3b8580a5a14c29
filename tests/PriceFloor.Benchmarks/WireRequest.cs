using System.Text;

namespace PriceFloor.Benchmarks;

/// <summary>Requests as they go over the wire.</summary>
public static class WireRequest
{
    /// <summary>One price check.</summary>
    public static byte[] Check(string key, string sku = "D-117") =>
        Of("POST", "/v1/price-checks", key, $$"""{"sku":"{{sku}}","channel":"c3","price":58.00}""");

    public static byte[] Get(string path, string key) =>
        Encoding.ASCII.GetBytes($"GET {path} HTTP/1.1\r\nHost: 127.0.0.1\r\nAuthorization: Bearer {key}\r\n\r\n");

    public static byte[] Of(string method, string path, string key, string json) => Encoding.ASCII.GetBytes(
        $"{method} {path} HTTP/1.1\r\nHost: 127.0.0.1\r\nAuthorization: Bearer {key}\r\nContent-Type: application/json\r\n"
        + $"Content-Length: {json.Length}\r\n\r\n{json}");
}
