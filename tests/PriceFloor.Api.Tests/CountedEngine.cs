using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.ManyStudios;
using PriceFloor.Storage;

namespace PriceFloor.Api.Tests;

/// <summary>An engine that counts how often it is asked.</summary>
/// <param name="inner">The engine that answers.</param>
/// <param name="asked">Called before each transaction that reads.</param>
internal sealed class CountedEngine(Engine inner, Action asked) : Engine
{
    public override bool AnswersAtOnce => inner.AnswersAtOnce;

    public override long Bytes => inner.Bytes;

    public static void Count(IWebHostBuilder host, Action asked) => host.ConfigureServices(services => services.AddSingleton(provider =>
    {
        var clock = provider.GetRequiredService<TimeProvider>();
        return new StoreMaker(place => new Store(new CountedEngine(place.Engine(clock), asked), clock));
    }));

    public override bool IsBehind() => inner.IsBehind();

    public override void Dispose() => inner.Dispose();

    protected internal override Opened Open(DateTimeOffset now) => inner.Open(now);

    protected internal override ValueTask<Session> BeginReading()
    {
        asked();
        return inner.BeginReading();
    }

    protected internal override ValueTask<Session> BeginWriting() => inner.BeginWriting();

    protected internal override ValueTask<Staging> BeginStaging() => inner.BeginStaging();

    protected internal override ValueTask Probe(TimeSpan within, DateTimeOffset now) => inner.Probe(within, now);

    protected internal override void Committed(long position, long number) => inner.Committed(position, number);
}
