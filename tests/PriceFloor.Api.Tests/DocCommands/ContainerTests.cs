using System.Globalization;
using System.Text.RegularExpressions;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Running;
using PriceFloor.Api.Tests.Conventions;
using SharpYaml.Serialization;
using Xunit;

namespace PriceFloor.Api.Tests.DocCommands;

/// <summary>
/// Without a container engine, this checks at least that the files for one agree: the image, its volume, port and names. `.ci/container` starts it
/// with an engine.
/// </summary>
public sealed partial class ContainerTests
{
    /// <summary>Options of the docker command line that the docs use, and whether each takes a value.</summary>
    private static readonly Dictionary<string, bool> s_options = new()
    {
        ["--tag"] = true,
        ["--platform"] = true,
        ["--volume"] = true,
        ["--publish"] = true,
        ["--env"] = true,
        ["--file"] = true,
        ["--read-only"] = false,
        ["--rm"] = false,
        ["--build"] = false,
        ["--detach"] = false,
    };

    /// <summary>The elements of the Compose specification that a file like ours may have.</summary>
    internal static readonly string[] ServiceNames =
    [
        "build", "cap_add", "cap_drop", "command", "container_name", "cpus", "depends_on", "deploy", "entrypoint", "env_file", "environment",
        "expose", "healthcheck", "hostname", "image", "init", "labels", "logging", "mem_limit", "networks", "pids_limit", "platform", "ports",
        "pull_policy", "read_only", "restart", "secrets", "security_opt", "stop_grace_period", "stop_signal", "tmpfs", "ulimits", "user",
        "volumes", "working_dir",
    ];

    public static TheoryData<string> DockerLines => [.. DocPages.Commands.Where(line => line.StartsWith("docker ", StringComparison.Ordinal))];

    [Theory]
    [MemberData(nameof(DockerLines))]
    public void Every_docker_line_fits_the_Dockerfile(string line)
    {
        var (words, options) = Read(line);
        foreach (var volume in options["--volume"])
            Assert.Equal($"{ContainerFiles.VolumeName}:{ContainerFiles.Volume}", volume);
        foreach (var published in options["--publish"])
            Assert.Equal($"127.0.0.1:5080:{ContainerFiles.Port}", published);
        foreach (var environment in options["--env"])
            Assert.Contains(environment.Split('=')[0], Settings.Names.Keys);
        foreach (var tag in options["--tag"])
            Assert.Equal(ContainerFiles.Image, tag);
        foreach (var file in options["--file"])
            Assert.True(File.Exists(Repository.File(file)), file);
        switch (words)
        {
            case ["build", "."] or ["buildx", "build", "."]:
                break;
            case ["run", ContainerFiles.Image, .. var verb]:
                Assert.NotNull(ProgramLine.Of(line));
                Assert.True(verb.Length == 0 || ProgramLine.Commands.Contains(verb[0]), line);
                break;
            case ["exec", "CONTAINER", .. var program]:
                Assert.Equal(ContainerFiles.EntryPoint, program.Take(ContainerFiles.EntryPoint.Count));
                Assert.NotNull(ProgramLine.Of(line));
                break;
            case ["cp", var from, "-"]:
                Assert.Equal($"CONTAINER:{ContainerFiles.Volume}/first-admin-key", from);
                break;
            case ["compose", "up"] or ["stop"]:
                break;
            default:
                Assert.Fail($"Nothing here knows how to check: {line}");
                break;
        }
    }

    [Fact]
    public void The_docs_have_docker_lines_and_one_of_them_with_a_wrong_name_would_be_noticed()
    {
        Assert.True(DockerLines.Count > 5);
        Assert.ThrowsAny<Exception>(() => Every_docker_line_fits_the_Dockerfile("docker run --volume data:/data pricefloor"));
        Assert.ThrowsAny<Exception>(() => Every_docker_line_fits_the_Dockerfile("docker run pricefloor restor /data/monday.db"));
        Assert.ThrowsAny<Exception>(() => Every_docker_line_fits_the_Dockerfile("docker run --readonly pricefloor"));
    }

    [Fact]
    public void The_Dockerfile_agrees_with_itself_and_with_the_program()
    {
        Assert.Equal(ContainerFiles.Volume, ContainerFiles.Environment["PRICEFLOOR_DATA"]);
        Assert.EndsWith($":{ContainerFiles.Port}", ContainerFiles.Environment["ASPNETCORE_URLS"], StringComparison.Ordinal);
        Assert.Equal(["dotnet", Path.GetFileName(typeof(Program).Assembly.Location)], ContainerFiles.EntryPoint);
        Assert.Equal([.. ContainerFiles.EntryPoint, Commands.HealthCheck], ContainerFiles.HealthCheck);
        Assert.Empty(Named(ContainerFiles.Dockerfile).Except(Settings.Names.Keys));
    }

    [Fact]
    public void The_compose_file_has_only_names_of_the_Compose_specification_and_of_our_settings()
    {
        var text = File.ReadAllText(Repository.File("docs/compose.yaml"));
        var yaml = new YamlStream();
        yaml.Load(new StringReader(text));
        var root = (YamlMappingNode)yaml.Documents[0].RootNode;
        Assert.Equal(["services", "volumes"], Names(root));
        var service = At(At(root, "services"), ContainerFiles.Image);
        Assert.Empty(Names(service).Except(ServiceNames));
        Assert.Equal(["driver", "options"], Names(At(service, "logging")));
        Assert.Equal(["max-size", "max-file"], Names(At(At(service, "logging"), "options")));
        Assert.Equal([ContainerFiles.VolumeName], Names(At(root, "volumes")));

        Assert.Equal(ContainerFiles.Image, Text(service, "image"));
        Assert.True(File.Exists(Path.Combine(Repository.File("docs"), Text(service, "build"), "Dockerfile")));
        Assert.Equal([$"{ContainerFiles.VolumeName}:{ContainerFiles.Volume}"], Texts(service, "volumes"));
        Assert.Equal([$"127.0.0.1:5080:{ContainerFiles.Port}"], Texts(service, "ports"));
        Assert.Equal("true", Text(service, "read_only"));
        Assert.True(int.Parse(Text(service, "stop_grace_period").TrimEnd('s'), CultureInfo.InvariantCulture) > 8,
            "docs/running.md: it ends within eight seconds.");
        Assert.Empty(Names(At(service, "environment")).Concat(Named(text)).Except(Settings.Names.Keys)); // also those in comments
    }

    [Fact]
    public void Every_setting_that_a_page_names_is_there()
    {
        string[] ofOthers = // of scripts, then of tests
            ["PRICEFLOOR_URL", "PRICEFLOOR_KEY", "PRICEFLOOR_POSTGRES", "PRICEFLOOR_REQUIRE_POSTGRES", "PRICEFLOOR_TEST_STORE"];
        foreach (var page in DocPages.All)
            Assert.Empty(Named(File.ReadAllText(Repository.File(page))).Except(Settings.Names.Keys).Except(ofOthers)
                .Select(name => $"{page}: {name}"));
    }

    internal static IEnumerable<string> Named(string text) => Setting().Matches(text).Select(match => match.Value).Distinct();

    private static (string[] Words, ILookup<string, string> Options) Read(string line)
    {
        var (words, options) = (new List<string>(), new List<(string, string)>());
        var rest = new Queue<string>(line.Split(' ', StringSplitOptions.RemoveEmptyEntries).Skip(1));
        while (rest.TryDequeue(out var word))
            if (word.StartsWith("--", StringComparison.Ordinal))
                options.Add((word, s_options[word] ? rest.Dequeue() : ""));
            else
                words.Add(word);
        return ([.. words], options.ToLookup(option => option.Item1, option => option.Item2));
    }

    private static IEnumerable<string> Names(YamlMappingNode node) => node.Children.Select(child => ((YamlScalarNode)child.Key).Value!);

    private static YamlNode Child(YamlMappingNode node, string name) => node.Children[new YamlScalarNode(name)];

    private static YamlMappingNode At(YamlMappingNode node, string name) => (YamlMappingNode)Child(node, name);

    private static string Text(YamlMappingNode node, string name) => ((YamlScalarNode)Child(node, name)).Value!;

    private static IEnumerable<string> Texts(YamlMappingNode node, string name) =>
        ((YamlSequenceNode)Child(node, name)).Children.Select(child => ((YamlScalarNode)child).Value!);

    [GeneratedRegex("PRICEFLOOR_[A-Z_]*[A-Z]", RegexOptions.None, 1000)]
    private static partial Regex Setting();
}
