using System.Text;
using PriceFloor.Storage.Tests.Postgres;
using static PriceFloor.Api.Tests.Running.RealProgram;

namespace PriceFloor.Api.Tests.Running;

/// <summary>A process of the service on the database of a test, and what it wrote to its log.</summary>
internal sealed class ServingProcess : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-serving-").FullName;
    private readonly StringBuilder _log = new();
    private readonly Started _service;

    /// <param name="cluster">Where the database is.</param>
    /// <param name="failover">Whether a standby that takes over may lack something: lossy or synchronous.</param>
    public ServingProcess(FailoverCluster cluster, string failover = "lossy")
    {
        _service = Start(_folder, new Dictionary<string, string>
        {
            ["PRICEFLOOR_ADMIN_KEY"] = Studio.AdminKey,
            ["PRICEFLOOR_STORE"] = cluster.ConnectionString,
            ["PRICEFLOOR_STORE_FAILOVER"] = failover,
            ["PRICEFLOOR_REQUESTS_PER_MINUTE"] = "1000000",
        });
        _service.Process.OutputDataReceived += (_, line) => Note(line.Data);
        _service.Process.ErrorDataReceived += (_, line) => Note(line.Data);
        _service.Process.BeginOutputReadLine();
        _service.Process.BeginErrorReadLine();
        Client = new HttpClient { BaseAddress = new Uri(_service.Address) };
        Client.DefaultRequestHeaders.Authorization = new("Bearer", Studio.AdminKey);
    }

    public HttpClient Client { get; }

    public string Log
    {
        get
        {
            lock (_log)
                return _log.ToString();
        }
    }

    public Task IsReady() => Ready(_service);

    /// <summary>SIGKILL: nothing of it runs after it.</summary>
    public void Kill() => _service.Process.Kill();

    public void Dispose()
    {
        Client.Dispose();
        _service.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private void Note(string? line)
    {
        lock (_log)
            _log.AppendLine(line);
    }
}
