using System.Globalization;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Running;
using PriceFloor.Api.Tests.Conventions;
using SharpYaml.Serialization;
using Xunit;

namespace PriceFloor.Api.Tests.DocCommands;

/// <summary>
/// The files that start several processes on one database agree with the program, with the image and with each other. No engine and no cluster runs
/// them here; `.ci/unit` has systemd read the unit, and `.ci/container` has Compose read its file where it is installed.
/// </summary>
public sealed class SeveralProcessesTests
{
    private const string Compose = "docs/compose.postgres.yaml", Manifest = "docs/pricefloor.k8s.yaml", Unit = "docs/pricefloor@.service";

    private static readonly string[] s_processes = ["api-1", "api-2"];

    [Theory]
    [InlineData(Compose)]
    [InlineData(Manifest)]
    [InlineData(Unit)]
    public void It_sets_only_what_the_program_knows_and_no_secret_is_in_it(string file)
    {
        var text = File.ReadAllText(Repository.File(file));
        Assert.Empty(ContainerTests.Named(text).Except(Settings.Names.Keys));
        Assert.Contains("PRICEFLOOR_STORE_FILE", text, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"(?m)^[^#]*\b(PRICEFLOOR_STORE|PRICEFLOOR_ADMIN_KEY)\b[^_]", text);
        Assert.DoesNotMatch(@"Password=(?!\.\.\.)", text);
        Assert.Contains($"]({Path.GetFileName(file)})", File.ReadAllText(Repository.File("docs/running.md")), StringComparison.Ordinal);
    }

    [Fact]
    public void In_Compose_the_owner_migrates_first_and_a_proxy_goes_to_equal_processes()
    {
        var root = Documents(Compose).Single();
        var services = Map(root, "services");
        foreach (var (name, service) in Each(services))
        {
            Assert.Empty(Each(service).Select(child => child.Name).Except(ContainerTests.ServiceNames).Except(["configs"]));
            foreach (var secret in Texts(service, "secrets"))
                Assert.Contains(secret, Each(Map(root, "secrets")).Select(one => one.Name));
            Assert.Equal(name is "migrate" or "api-1" or "api-2", Text(service, "image") == ContainerFiles.Image);
        }

        var migrate = Map(services, "migrate");
        Assert.Equal([StoreCommands.Migrate], Texts(migrate, "command"));
        Assert.Equal(["owner-store"], Texts(migrate, "secrets"));
        foreach (var process in s_processes.Select(name => Map(services, name)))
        {
            Assert.Equal("service_completed_successfully", Text(Map(Map(process, "depends_on"), "migrate"), "condition"));
            Assert.Equal(["store", "admin-key"], Texts(process, "secrets"));
            Assert.StartsWith($"{ContainerFiles.Volume}:", Assert.Single(Texts(process, "tmpfs")), StringComparison.Ordinal);
            foreach (var (name, value) in Scalars(Map(process, "environment")))
                if (name.EndsWith("_FILE", StringComparison.Ordinal))
                    Assert.Contains(value, Texts(process, "secrets").Select(secret => $"/run/secrets/{secret}"));
            Assert.Equal(Text(Map(process, "environment"), "PRICEFLOOR_TRUSTED_PROXIES"), Subnet(root));
            Assert.True(Seconds(Text(process, "stop_grace_period")) > 8, "docs/running.md: it ends within eight seconds.");
        }

        var proxy = Text(Map(Map(root, "configs"), "proxy"), "content");
        Assert.All(s_processes, name => Assert.Contains($"server {name}:{ContainerFiles.Port} ", proxy, StringComparison.Ordinal));
        Assert.Contains($"listen {Texts(Map(services, "proxy"), "ports").Single().Split(':')[^1]};", proxy, StringComparison.Ordinal);
        Assert.Contains("CREATE ROLE pricefloor LOGIN", Text(Map(Map(root, "configs"), "roles"), "content"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task In_Kubernetes_the_parts_find_each_other_and_probe_what_the_program_answers()
    {
        var parts = Documents(Manifest).ToDictionary(part => $"{Text(part, "apiVersion")} {Text(part, "kind")}");
        Assert.Equal(["batch/v1 Job", "apps/v1 Deployment", "policy/v1 PodDisruptionBudget", "v1 Service"], parts.Keys);
        var deployment = Map(parts["apps/v1 Deployment"], "spec");
        var (serving, migrating) = (Pod(deployment), Pod(Map(parts["batch/v1 Job"], "spec")));
        var labels = Scalars(Map(Map(Map(deployment, "template"), "metadata"), "labels"));
        foreach (var selector in new[] { Map(Map(deployment, "selector"), "matchLabels"), Map(Map(parts["v1 Service"], "spec"), "selector"),
            Map(Map(Map(parts["policy/v1 PodDisruptionBudget"], "spec"), "selector"), "matchLabels") })
            Assert.Equal(labels, Scalars(selector));
        Assert.NotEqual(labels, Scalars(Map(Map(Map(Map(parts["batch/v1 Job"], "spec"), "template"), "metadata"), "labels")));

        var api = Container(serving);
        Assert.Equal([StoreCommands.Migrate], Texts(Container(migrating), "args"));
        Assert.Equal(ContainerFiles.Port, Text(Maps(api, "ports").Single(), "containerPort"));
        Assert.Equal(Text(Maps(api, "ports").Single(), "name"), Text(Maps(Map(parts["v1 Service"], "spec"), "ports").Single(), "targetPort"));
        foreach (var pod in new[] { serving, migrating })
        {
            Assert.StartsWith($"{ContainerFiles.Image}:", Text(Container(pod), "image"), StringComparison.Ordinal);
            Assert.Equal(Maps(pod, "volumes").Select(volume => Text(volume, "name")),
                Maps(Container(pod), "volumeMounts").Select(mount => Text(mount, "name")));
            Assert.Equal(ContainerFiles.Volume, Text(Maps(Container(pod), "volumeMounts").First(), "mountPath"));
            var secret = Map(Maps(pod, "volumes").Last(), "secret");
            Assert.Equal(Maps(Container(pod), "env").Select(one => Text(one, "value")),
                Maps(secret, "items").Select(item => $"/run/secrets/pricefloor/{Text(item, "path")}"));
        }

        Assert.True(int.Parse(Text(serving, "terminationGracePeriodSeconds"), CultureInfo.InvariantCulture)
            > 8 + int.Parse(Text(Map(Map(Map(api, "lifecycle"), "preStop"), "sleep"), "seconds"), CultureInfo.InvariantCulture));
        await using var studio = new Studio();
        foreach (var probe in new[] { "readinessProbe", "livenessProbe" })
            Assert.Equal(200, (await studio.Get(Text(Map(Map(api, probe), "httpGet"), "path"), studio.ClientWith(null))).Status);
    }

    /// <summary>What differs from the unit for one process, and nothing else.</summary>
    [Fact]
    public void The_template_for_systemd_is_the_unit_but_for_its_port_and_its_store()
    {
        var (one, several) = (Lines("docs/pricefloor.service"), Lines(Unit));
        Assert.Equal(
        [
            "Environment=ASPNETCORE_URLS=http://127.0.0.1:5080", "Environment=PRICEFLOOR_BACKUPS_KEPT=14",
            "Environment=PRICEFLOOR_BACKUP_EVERY_HOURS=24", "Environment=PRICEFLOOR_DATA=/var/lib/pricefloor", "Restart=on-failure",
            "StateDirectory=pricefloor",
        ], Apart(one, several));
        Assert.Equal(
        [
            "Environment=ASPNETCORE_URLS=http://127.0.0.1:%i", "Environment=PRICEFLOOR_DATA=/var/lib/pricefloor-%i",
            "Environment=PRICEFLOOR_STORE_FILE=%d/store", "LoadCredential=store:/etc/pricefloor/store", "Restart=always",
            "StateDirectory=pricefloor-%i",
        ], Apart(several, one));

        static List<string> Lines(string file) => [.. File.ReadLines(Repository.File(file)).Where(line => line.Contains('=', StringComparison.Ordinal)
            && !line.StartsWith('#') && !line.StartsWith("Description=", StringComparison.Ordinal))];
        static IEnumerable<string> Apart(IEnumerable<string> these, IEnumerable<string> those) => these.Except(those).Order(StringComparer.Ordinal);
    }

    private static YamlMappingNode Pod(YamlMappingNode spec) => Map(Map(spec, "template"), "spec");

    private static YamlMappingNode Container(YamlMappingNode pod) => Maps(pod, "containers").Single();

    private static string Subnet(YamlMappingNode root) =>
        Text(Maps(Map(Map(Map(root, "networks"), "default"), "ipam"), "config").Single(), "subnet");

    private static int Seconds(string text) => int.Parse(text.TrimEnd('s'), CultureInfo.InvariantCulture);

    private static IEnumerable<YamlMappingNode> Documents(string file)
    {
        var yaml = new YamlStream();
        yaml.Load(new StringReader(File.ReadAllText(Repository.File(file))));
        return yaml.Documents.Select(document => (YamlMappingNode)document.RootNode);
    }

    private static YamlNode Child(YamlMappingNode node, string name) => node.Children[new YamlScalarNode(name)];

    private static YamlMappingNode Map(YamlMappingNode node, string name) => (YamlMappingNode)Child(node, name);

    private static IEnumerable<YamlMappingNode> Maps(YamlMappingNode node, string name) =>
        ((YamlSequenceNode)Child(node, name)).Children.Cast<YamlMappingNode>();

    private static string Text(YamlMappingNode node, string name) => ((YamlScalarNode)Child(node, name)).Value!;

    private static string[] Texts(YamlMappingNode node, string name) =>
        node.Children.TryGetValue(new YamlScalarNode(name), out var child)
            ? [.. ((YamlSequenceNode)child).Children.OfType<YamlScalarNode>().Select(text => text.Value!)] : [];

    private static IEnumerable<(string Name, YamlMappingNode Value)> Each(YamlMappingNode node) =>
        node.Children.Select(child => (((YamlScalarNode)child.Key).Value!, (child.Value as YamlMappingNode)!));

    private static List<(string Name, string Value)> Scalars(YamlMappingNode node) =>
        [.. node.Children.Select(child => (((YamlScalarNode)child.Key).Value!, ((YamlScalarNode)child.Value).Value!))];
}
