using System.Text;
using Xunit;
using static PriceFloor.Storage.Tests.Sqlite.StoreFile;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>Forgetting: a forgotten document is in no file, and its numbers are never given again.</summary>
public sealed class ForgettingTests : StoreInAFolder
{
    [Fact]
    public void What_is_forgotten_is_in_no_file_any_more()
    {
        const string Secret = "a household's secret";
        Save("other", "1");
        for (var i = 0; i < 30; i++)
            Save("secret-key", $"\"{Secret} {i} {new string('z', 500)}\"");
        Delete("secret-key");
        Save("other", "2");
        Close();
        Assert.Equal(31, Forgetting.Forget(Db, "design", "secret-key", Clock.GetUtcNow()));
        foreach (var file in Directory.GetFiles(Folder))
            foreach (var trace in new[] { Secret, "secret-key" })
                Assert.Equal(-1, File.ReadAllBytes(file).AsSpan().IndexOf(Encoding.UTF8.GetBytes(trace)));
        Assert.Empty(StoreCheck.Of(Db, (_, _) => null).Faults);
        Assert.Equal(["1", "2"], Open().Read(snapshot => snapshot.History("design", "other")).Select(revision => revision.Body!));
    }

    [Fact]
    public void After_forgetting_another_life_begins_whose_numbers_are_higher()
    {
        var life = Open().LifeName;
        for (var i = 1; i <= 6; i++)
            Save("a", $"{i}");
        Delete("a"); // number 7
        Save("b", "1");
        Close();
        Forgetting.Forget(Db, "design", "a", Clock.GetUtcNow());
        Assert.NotEqual(life, Open().LifeName);
        Assert.Equal((8, 8, 9), (Save("a", "1").Number, Save("b", "2").Number, Save("b", "3").Number));
        Assert.Equal(["b@1", "a@8", "b@8", "b@9"], Query<string>(Db, "SELECT key || '@' || number FROM revision ORDER BY position"));
        Assert.Empty(StoreCheck.Of(Db, (_, _) => null).Faults);
    }
}
