using Microsoft.Extensions.Configuration;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Documents.Batches;
using PriceFloor.Api.Running;
using Xunit;

namespace PriceFloor.Api.Tests.Conventions;

/// <summary>The settings and limits in docs/running.md are those of the program.</summary>
public sealed class SettingTests
{
    private static readonly string s_running = File.ReadAllText(Repository.File("docs/running.md"));

    public static TheoryData<string, Func<Settings, int>> Numbers => new()
    {
        { "PRICEFLOOR_REQUESTS_PER_MINUTE", settings => settings.RequestsPerMinute },
        { "PRICEFLOOR_WRONG_KEYS_PER_MINUTE", settings => settings.WrongKeysPerMinute },
        { "PRICEFLOOR_BODY_BYTES", settings => settings.BodyBytes },
        { "PRICEFLOOR_BATCH_BYTES", settings => settings.BatchBytes },
        { "PRICEFLOOR_BATCHES_AT_ONCE", settings => settings.BatchesAtOnce },
        { "PRICEFLOOR_CONNECTIONS", settings => settings.Connections },
        { "PRICEFLOOR_HEADER_SECONDS", settings => settings.HeaderSeconds },
        { "PRICEFLOOR_ANSWER_SECONDS", settings => settings.AnswerSeconds },
        { "PRICEFLOOR_LEAST_BYTES_PER_SECOND", settings => settings.LeastBytesPerSecond },
    };

    [Fact]
    public void Every_setting_has_its_row_word_for_word_and_there_is_no_other_row()
    {
        var rows = s_running.Split('\n').Where(line => line.StartsWith("| `PRICEFLOOR_", StringComparison.Ordinal));
        Assert.Equal(Settings.Names.Select(setting => $"| `{setting.Key}` | {setting.Value} |").Order(StringComparer.Ordinal),
            rows.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_secret_can_be_in_a_file_and_every_setting_named_like_one_is_a_secret()
    {
        Assert.All(Settings.Names.Keys.Where(Secrets.Is), name => Assert.Contains(name + "_FILE", Settings.Names.Keys));
        string[] telling = ["_KEY", "_SECRET", "_PASSWORD", "_TOKEN"];
        Assert.All(Settings.Names.Keys.Where(name => telling.Any(end => name.EndsWith(end, StringComparison.Ordinal))),
            name => Assert.True(Secrets.Is(name), name));
        Assert.True(Secrets.Is("PRICEFLOOR_ADMIN_KEY"));
    }

    [Theory]
    [MemberData(nameof(Numbers))]
    public void A_number_has_the_default_in_its_row_and_must_be_above_0(string name, Func<Settings, int> of)
    {
        Assert.Contains(FormattableString.Invariant($"; {of(Read())} by default."), Settings.Names[name], StringComparison.Ordinal);
        Assert.Equal(7, of(Read((name, "7"))));
        foreach (var wrong in new[] { "0", "-1", "1.5", "many", "1000000001" })
            Assert.Contains(name, Assert.Throws<SettingsException>(() => Read((name, wrong))).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("lines of a list", Limits.Lines)]
    [InlineData("letters of a name", Limits.NameLength)]
    [InlineData("letters of a key", Limits.KeyLength)]
    [InlineData("letters of an alias", Limits.AliasLength)]
    [InlineData("levels of JSON", 32)]
    [InlineData("digits of a number", 18)]
    [InlineData("items of a page", 1000)]
    [InlineData("checks in a JSON array", 1000)]
    [InlineData("documents stored together", AllOrNothing.MostLines)]
    public void Every_fixed_limit_has_its_row(string what, int most) =>
        Assert.Contains(FormattableString.Invariant($"| {what} | {most} |"), s_running, StringComparison.Ordinal);

    private static Settings Read(params (string Name, string Value)[] values) => Settings.Read(
        new ConfigurationBuilder().AddInMemoryCollection(values.ToDictionary(pair => pair.Name, pair => (string?)pair.Value)).Build(), demo: false);
}
