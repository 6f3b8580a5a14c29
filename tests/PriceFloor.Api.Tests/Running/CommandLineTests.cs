using PriceFloor.Api.Configuration;
using PriceFloor.Api.Running;
using Xunit;
using static PriceFloor.Api.Tests.Running.RealProgram;

namespace PriceFloor.Api.Tests.Running;

/// <summary>What the program does with its arguments: help and the version end, and a mistyped word starts nothing and makes no store.</summary>
public sealed class CommandLineTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-line-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData(new string[0], "serve")]
    [InlineData(new[] { "--demo" }, "serve")]
    [InlineData(new[] { "--urls", "http://127.0.0.1:9" }, "serve")]
    [InlineData(new[] { "--urls=http://127.0.0.1:9", "--demo" }, "serve")]
    [InlineData(new[] { "--PRICEFLOOR_METRICS=on" }, "serve")]
    [InlineData(new[] { "--Serilog:MinimumLevel:Default=Debug" }, "serve")]
    [InlineData(new[] { "healthcheck" }, "healthcheck")]
    [InlineData(new[] { "openapi" }, "openapi")]
    [InlineData(new[] { "backup", "x.db" }, "backup")]
    [InlineData(new[] { "-h" }, "--help")]
    [InlineData(new[] { "backup", "--help" }, "--help")]
    [InlineData(new[] { "--version" }, "--version")]
    public void Every_verb_and_option_is_known(string[] arguments, string verb) => Assert.Equal(verb, CommandLine.Of(arguments).Verb);

    [Theory]
    [InlineData("--dmeo")]
    [InlineData("-demo")]
    [InlineData("-v")]
    [InlineData("--url=http://127.0.0.1:9")]
    [InlineData("--PRICEFLOOR_DATTA=/tmp")]
    [InlineData("--urls")]
    [InlineData("bakcup")]
    [InlineData("bakcup", "--urls=http://127.0.0.1:9")]
    [InlineData("backup", "a.db", "b.db")]
    [InlineData("check-store", "--demo")]
    [InlineData("openapi", "now")]
    public void What_is_mistyped_is_refused(params string[] arguments) =>
        Assert.Contains(arguments[0].Split('=')[0], Assert.Throws<SettingsException>(() => CommandLine.Of(arguments)).Message,
            StringComparison.Ordinal);

    [Theory]
    [InlineData("--help")]
    [InlineData("-h")]
    public async Task Help_lists_every_verb_and_ends_without_a_store(string option)
    {
        var help = await Run(Data, option);
        Assert.Equal((0, ""), (help.Code, help.Errors));
        foreach (var word in Commands.All.Keys.Concat(["--demo", "--urls", "--help", "--version"]))
            Assert.Contains(word, help.Output, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Data));
    }

    [Fact]
    public async Task The_version_is_one_line_and_ends_without_a_store()
    {
        var version = await Run(Data, "--version");
        Assert.Equal((0, "0.1.0", ""), (version.Code, version.Output.TrimEnd(), version.Errors));
        Assert.False(Directory.Exists(Data));
    }

    [Fact]
    public async Task A_mistyped_option_ends_with_one_sentence_and_without_a_store()
    {
        var refused = await Run(Data, "--dmeo");
        Assert.Equal((1, ""), (refused.Code, refused.Output));
        OneSentence(refused.Errors, "\"--dmeo\" is not an option", "--help");
        Assert.False(Directory.Exists(Data));
    }

    private string Data => Path.Combine(_folder, "data");
}
