using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Connections;

namespace PriceFloor.Api.Configuration;

/// <summary>Where the service listens, and why it cannot, so whoever runs it can fix that.</summary>
public static class Addresses
{
    public const string Usual = "http://127.0.0.1:5080";

    private const string Setting = "ASPNETCORE_URLS";

    /// <summary>Only this machine, unless ASPNETCORE_URLS says otherwise.</summary>
    public static void UseAddresses(this WebApplicationBuilder builder)
    {
        if (builder.Configuration["urls"] is null && builder.Configuration["http_ports"] is null)
            builder.WebHost.UseUrls(Usual);
        foreach (var address in (builder.Configuration["urls"] ?? "")
                .Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
            if (FaultIn(address) is { } fault)
                throw new SettingsException($"{Setting} has \"{address}\", {fault}; write it like {Usual}.");
    }

    /// <summary>The message if listening failed; null if something else failed.</summary>
    public static string? WhyNot(Exception fault, string? addresses)
    {
        var why = fault switch
        {
            IOException { InnerException: AddressInUseException } => "something already listens there",
            SocketException { SocketErrorCode: SocketError.AccessDenied } => "this user may not; ports below 1024 are often kept for the system",
            SocketException { SocketErrorCode: SocketError.AddressNotAvailable } => "this machine has no such address",
            SocketException other => other.Message,
            _ => null,
        };
        return why is null ? null : $"The service cannot listen at {addresses}: {why}. Stop what is in the way, or set another address in {Setting}.";
    }

    private static string? FaultIn(string address)
    {
        try
        {
            var parsed = BindingAddress.Parse(address);
            return !parsed.Scheme.Equals("http", StringComparison.OrdinalIgnoreCase) ? "but a proxy before the service must provide TLS"
                : parsed.Port is < 0 or > IPEndPoint.MaxPort ? $"but the highest port is {IPEndPoint.MaxPort}"
                : null;
        }
        catch (FormatException)
        {
            return "which is not an address";
        }
    }
}
