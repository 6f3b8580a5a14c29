using System.Reflection;
using System.Text.RegularExpressions;
using PriceFloor.Storage;
using PriceFloor.Storage.Postgres;
using Xunit;

namespace PriceFloor.Api.Tests.Conventions;

/// <summary>Facts about the code that the compiler cannot state.</summary>
public sealed class HouseTests
{
    [Fact]
    public void Pricing_knows_only_the_framework_and_no_IO()
    {
        var names = typeof(StudioYear).Assembly.GetReferencedAssemblies().Select(assembly => assembly.Name!).ToList();
        Assert.All(names, name => Assert.True(name.StartsWith("System.", StringComparison.Ordinal), name));
        Assert.DoesNotContain(names, name => name.Contains("Net.", StringComparison.Ordinal) || name.Contains("IO", StringComparison.Ordinal)
            || name.Contains("Console", StringComparison.Ordinal));
    }

    [Fact]
    public void Storage_sees_no_HTTP_and_nothing_sees_Api()
    {
        Assert.DoesNotContain(typeof(Store).Assembly.GetReferencedAssemblies(),
            assembly => assembly.Name!.StartsWith("Microsoft.AspNetCore", StringComparison.Ordinal)
                || assembly.Name.StartsWith("PriceFloor", StringComparison.Ordinal));
        Assert.DoesNotContain(typeof(StudioYear).Assembly.GetReferencedAssemblies(),
            assembly => assembly.Name!.StartsWith("PriceFloor", StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_that_Storage_shows_is_of_an_engine()
    {
        const BindingFlags Shown = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        var methods = new[] { typeof(Store), typeof(StoreInFile), typeof(StoreOnServer) }.SelectMany(one => one.Assembly.GetExportedTypes())
            .SelectMany(type => type.GetMethods(Shown).Concat<MethodBase>(type.GetConstructors(Shown))).ToList();
        Assert.NotEmpty(methods);
        foreach (var method in methods)
        {
            var types = method.GetParameters().Select(parameter => parameter.ParameterType.ToString())
                .Append((method as MethodInfo)?.ReturnType.ToString() ?? "");
            Assert.DoesNotContain(types, type => Regex.IsMatch(type, @"(?<!PriceFloor\.Storage\.)Sqlite|Npgsql|System\.Data\.",
                RegexOptions.None, TimeSpan.FromSeconds(5)));
        }
    }

    [Fact]
    public void There_is_no_binary_floating_point_in_Pricing()
    {
        const BindingFlags All = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static
            | BindingFlags.DeclaredOnly;
        static bool IsFloat(Type type) => type == typeof(double) || type == typeof(float) || type == typeof(double?) || type == typeof(float?);
        foreach (var type in typeof(StudioYear).Assembly.GetTypes())
        {
            Assert.DoesNotContain(type.GetFields(All), field => IsFloat(field.FieldType));
            Assert.DoesNotContain(type.GetMethods(All), method => IsFloat(method.ReturnType)
                || method.GetParameters().Any(parameter => IsFloat(parameter.ParameterType))
                || (method.GetMethodBody()?.LocalVariables.Any(local => IsFloat(local.LocalType)) ?? false));
        }
    }

    [Fact]
    public void Program_is_a_table_of_contents() => Assert.InRange(File.ReadAllLines(Repository.File("src/PriceFloor.Api/Program.cs")).Length, 1, 59);

    [Fact]
    public void Files_stay_small_enough_to_read()
    {
        var files = Directory.EnumerateFiles(Repository.File("src"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)).ToList();
        Assert.True(files.Count > 50);
        Assert.All(files, file => Assert.InRange(File.ReadAllLines(file).Length, 1, 250));
    }
}
