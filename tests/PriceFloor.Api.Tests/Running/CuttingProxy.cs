using System.Net;
using System.Net.Sockets;

namespace PriceFloor.Api.Tests.Running;

/// <summary>
/// Stands between the service and its database, and can cut the connection after a commit was sent: it is kept, and nobody says so.
/// </summary>
internal sealed class CuttingProxy : IDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly string _socket;
    private int _cuts;

    /// <param name="folder">Where the database's socket is.</param>
    public CuttingProxy(string folder)
    {
        _socket = Path.Combine(folder, ".s.PGSQL.5432");
        _listener.Start();
        _ = AcceptAsync();
    }

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    /// <summary>The next commit is cut.</summary>
    public void CutNextCommit() => Volatile.Write(ref _cuts, 1);

    public void Dispose() => _listener.Dispose();

    private async Task AcceptAsync()
    {
        try
        {
            while (true)
                _ = ServeAsync(await _listener.AcceptSocketAsync());
        }
        catch (Exception e) when (e is SocketException or ObjectDisposedException)
        {
            // the test is over
        }
    }

    private async Task ServeAsync(Socket service)
    {
        using (service)
        using (var database = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified))
            try
            {
                await database.ConnectAsync(new UnixDomainSocketEndPoint(_socket));
                var isCut = false;
                await Task.WhenAny(
                    ForwardAsync(service, database, sent =>
                    {
                        if (sent.IndexOf("COMMIT\0"u8) >= 0 && Interlocked.Exchange(ref _cuts, 0) == 1)
                            Volatile.Write(ref isCut, true);
                        return true;
                    }),
                    ForwardAsync(database, service, _ => !Volatile.Read(ref isCut))); // what is answered to a cut commit is not passed on
            }
            catch (SocketException)
            {
                // both ends learn of it
            }
    }

    /// <summary>Until one end is closed, or something is not to be passed on.</summary>
    private static async Task ForwardAsync(Socket from, Socket to, Passes passes)
    {
        var buffer = new byte[64 * 1024];
        while (await from.ReceiveAsync(buffer.AsMemory()) is > 0 and var count && passes(buffer.AsSpan(0, count)))
            await to.SendAsync(buffer.AsMemory(0, count));
    }

    private delegate bool Passes(ReadOnlySpan<byte> sent);
}
