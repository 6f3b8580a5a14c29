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
    [InlineData(new[] { "serve" }, "serve")]
    [InlineData(new[] { "demo", "--urls", "http://127.0.0.1:9" }, "serve")]
    [InlineData(new[] { "--urls", "http://127.0.0.1:9", "serve", "--demo" }, "serve")]
    [InlineData(new[] { "check", "a.csv", "--channel", "web", "--skuColumn=Item", "--csv" }, "check")]
    [InlineData(new[] { "--data", "here", "floor", "RB-014", "web", "--json" }, "floor")]
    [InlineData(new[] { "check-store", "--data=here" }, "check-store")]
    [InlineData(new[] { "forget", "design", "RB-014", "--studio", "harbour" }, "forget")]
    [InlineData(new[] { "copy-store", "--from", "here" }, "copy-store")]
    [InlineData(new[] { "help" }, "--help")]
    [InlineData(new[] { "help", "check" }, "--help")]
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
    [InlineData("floor")]
    [InlineData("floor", "RB-014", "web", "fair")]
    [InlineData("check", "a.csv", "--cvs")]
    [InlineData("backup", "a.db", "--json")]
    [InlineData("demoo")]
    public void What_is_mistyped_is_refused(params string[] arguments) =>
        Assert.Contains(arguments[0].Split('=')[0], Assert.Throws<SettingsException>(() => CommandLine.Of(arguments)).Message,
            StringComparison.Ordinal);

    [Theory]
    [InlineData("\"chek\" is not a verb of this program, but there is \"check\"", "chek", "a.csv")]
    [InlineData("but there is \"backup\"", "bakcup", "--help")]
    [InlineData("but there is \"--demo\"", "--dmeo")]
    [InlineData("but there is \"--urls\"", "--ulrs=http://127.0.0.1:9")]
    [InlineData("but there is \"--PRICEFLOOR_DATA\"", "--PRICEFLOOR_DATTA=/tmp")]
    [InlineData("\"--chanel\" is not an option of the verb \"check\", but there is \"channel\"", "check", "a.csv", "--chanel=web")]
    [InlineData("\"--urls\" is not an option of the verb \"check-store\"; there are data, studio", "check-store", "--urls=http://127.0.0.1:9")]
    public void A_refusal_names_the_nearest(string told, params string[] arguments) =>
        Assert.Contains(told, Assert.Throws<SettingsException>(() => CommandLine.Of(arguments)).Message, StringComparison.Ordinal);

    [Fact]
    public void Without_a_word_the_downloaded_program_says_what_it_can_do_and_the_others_serve()
    {
        Assert.Equal("--help", CommandLine.Of([], isDownload: true).Verb);
        Assert.Equal("serve", CommandLine.Of([]).Verb);
        Assert.Equal("serve", CommandLine.Of(["--demo"], isDownload: true).Verb);
        Assert.False(Download.IsThis);
    }

    [Fact]
    public void Demo_and_data_reach_the_service_as_its_own_settings()
    {
        var line = CommandLine.Of(["demo", "--data", "/here", "--urls=http://127.0.0.1:9"]);
        Assert.True(line.Demo);
        Assert.Equal(["--urls=http://127.0.0.1:9", "--PRICEFLOOR_DATA=/here"], line.HostArguments);
        Assert.Equal("/here", CommandLine.Of(["check-store", "--data", "/here"]).Configuration["PRICEFLOOR_DATA"]);
    }

    [Fact]
    public async Task Every_verb_has_a_help_of_its_own_with_its_options()
    {
        foreach (var (name, verb) in Commands.All)
        {
            var output = new StringWriter();
            Commands.Tell("--help", [name], output);
            foreach (var words in verb.Options.Select(option => option.Usage).Append(verb.Usage(name)).Append(verb.Does))
                Assert.Contains(words, output.ToString(), StringComparison.Ordinal);
        }

        var help = await Run(Data, "check", "--help");
        Assert.Equal((0, ""), (help.Code, help.Errors));
        Assert.StartsWith("check SHEET [OPTIONS]", help.Output, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Data));
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("-h")]
    public async Task Help_lists_every_verb_and_ends_without_a_store(string option)
    {
        var help = await Run(Data, option);
        Assert.Equal((0, ""), (help.Code, help.Errors));
        foreach (var word in Commands.All.Keys.Concat(["--data", "--urls", "--help", "--version"]))
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
