using Microsoft.Extensions.Configuration;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Running;
using PriceFloor.Storage.Postgres;
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
                + "PRICEFLOOR_DATA names; and a database of PostgreSQL: Host=db;Database=pricefloor;Username=pricefloor;Password=...", fault.Message);
        }

        File.Delete(file);
    }

    [Fact]
    public void It_may_be_a_database_whose_name_has_no_password_in_it()
    {
        var store = Assert.IsType<StoreOnServer>(Of(("PRICEFLOOR_STORE", "Host=db;Database=studio;Username=pricefloor;Password=open-sesame")).Store);
        Assert.Equal("PostgreSQL db:5432/studio", store.Name);
        Assert.Equal(4, store.NewestSchema);
    }

    [Fact]
    public void A_database_that_cannot_be_read_is_refused_without_the_password()
    {
        var fault = Assert.Throws<SettingsException>(() => Of(("PRICEFLOOR_STORE", "Host=db;Pasword=open-sesame")));
        Assert.StartsWith("PRICEFLOOR_STORE: It cannot be read. Separate its parts with semicolons", fault.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("sesame", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Set_in_both_ways_it_is_refused() => Assert.StartsWith("PRICEFLOOR_STORE and PRICEFLOOR_STORE_FILE are both set",
        Assert.Throws<SettingsException>(() => Of(("PRICEFLOOR_STORE", "sqlite"), ("PRICEFLOOR_STORE_FILE", "/run/secrets/store"))).Message,
        StringComparison.Ordinal);

    private static Settings Of(params (string Name, string? Value)[] set) => Settings.Read(
        new ConfigurationBuilder().AddInMemoryCollection(set.ToDictionary(one => one.Name, one => one.Value)).Build(), demo: false);
}
