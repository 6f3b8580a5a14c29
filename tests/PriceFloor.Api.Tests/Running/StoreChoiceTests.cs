using Microsoft.Extensions.Configuration;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Running;
using Xunit;

namespace PriceFloor.Api.Tests.Running;

/// <summary>One setting says what keeps the store.</summary>
public sealed class StoreChoiceTests
{
    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("sqlite")]
    public void It_is_one_file_in_the_data_folder_whether_that_is_said_or_not(string? set)
    {
        var settings = Of(("PRICEFLOOR_STORE", set), ("PRICEFLOOR_DATA", "somewhere"));
        Assert.IsType<StoreInFile>(settings.Store);
        Assert.Equal(Path.GetFullPath(Path.Combine("somewhere", "pricefloor.db")), settings.Store.Name);
    }

    [Fact]
    public void It_may_be_said_in_a_file()
    {
        var file = Path.GetTempFileName();
        File.WriteAllText(file, "sqlite\n");
        Assert.IsType<StoreInFile>(Of(("PRICEFLOOR_STORE_FILE", file)).Store);
        File.Delete(file);
    }

    [Theory]
    [InlineData("Host=db;Username=pricefloor;Password=open-sesame")]
    [InlineData("SQLite")]
    [InlineData("pricefloor.db")]
    public void Another_store_is_refused_with_what_is_known_and_without_the_password(string set)
    {
        var file = Path.GetTempFileName();
        File.WriteAllText(file, set);
        foreach (var (name, value) in new[] { ("PRICEFLOOR_STORE", set), ("PRICEFLOOR_STORE_FILE", file) })
        {
            var fault = Assert.Throws<SettingsException>(() => Of((name, value)));
            Assert.True(Starting.IsOperatorsFault(fault));
            Assert.Equal($"{name} names a store that this program does not know. It knows sqlite: one file, pricefloor.db, in the folder that "
                + "PRICEFLOOR_DATA names. Set that, or nothing.", fault.Message);
        }

        File.Delete(file);
    }

    [Fact]
    public void Set_in_both_ways_it_is_refused() => Assert.StartsWith("PRICEFLOOR_STORE and PRICEFLOOR_STORE_FILE are both set",
        Assert.Throws<SettingsException>(() => Of(("PRICEFLOOR_STORE", "sqlite"), ("PRICEFLOOR_STORE_FILE", "/run/secrets/store"))).Message,
        StringComparison.Ordinal);

    private static Settings Of(params (string Name, string? Value)[] set) => Settings.Read(
        new ConfigurationBuilder().AddInMemoryCollection(set.ToDictionary(one => one.Name, one => one.Value)).Build(), demo: false);
}
