using PriceFloor.Storage.Tests.Sqlite;

namespace PriceFloor.Storage.Tests.Waiting;

/// <summary>The same file, behind an engine that answers later.</summary>
public sealed class WaitingUnderTest : SqliteUnderTest
{
    protected override Engine EngineOf(string path) => new WaitingEngine(base.EngineOf(path));
}
