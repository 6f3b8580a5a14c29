using Xunit;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>Two programs on one store: the second one's message names the first.</summary>
public sealed class StoreLockTests : StoreInAFolder
{
    [Fact]
    public void The_lock_names_its_holder_and_is_free_again_afterwards()
    {
        using (var one = new StoreLock(Folder, Clock))
        {
            one.Take();
            using var two = new StoreLock(Folder, Clock);
            var fault = Assert.Throws<StoreException>(two.Take).Message;
            Assert.Contains(At("pricefloor.lock"), fault, StringComparison.Ordinal);
            if (!OperatingSystem.IsWindows())
                Assert.Contains($"pid {Environment.ProcessId}, started 2027-01-02T09:00:00Z", fault, StringComparison.Ordinal);
        }

        using var three = new StoreLock(Folder, Clock);
        three.Take();
    }
}
