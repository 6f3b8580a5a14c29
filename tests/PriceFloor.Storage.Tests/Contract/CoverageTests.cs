using System.Reflection;
using System.Text.RegularExpressions;
using PriceFloor.Api.Tests.Conventions;
using Xunit;

namespace PriceFloor.Storage.Tests.Contract;

/// <summary>The contract covers every question to the store, and every engine runs the whole contract.</summary>
public sealed class CoverageTests
{
    private static readonly Type[] s_types = typeof(CoverageTests).Assembly.GetTypes();

    [Fact]
    public void Every_engine_runs_every_contract()
    {
        var contracts = s_types.Where(type => type.IsAbstract && type != typeof(StoreContract<>)
            && type.Name.EndsWith("Contract`1", StringComparison.Ordinal)).ToList();
        var engines = s_types.Where(type => !type.IsAbstract && type.IsSubclassOf(typeof(EngineUnderTest))).ToList();
        Assert.True(contracts.Count > 10);
        Assert.NotEmpty(engines);
        foreach (var engine in engines)
            Assert.All(contracts, contract => Assert.Contains(s_types, type => type.IsSealed && type.BaseType == contract.MakeGenericType(engine)));
    }

    [Fact]
    public void Every_question_that_a_store_answers_is_asked_by_the_contract()
    {
        const BindingFlags Own = BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly;
        string[] ofOneEngine = [nameof(Store.Open), nameof(Store.OpenAsync), nameof(Store.IsBehind), nameof(Store.Dispose)];
        var contracts = Directory.EnumerateFiles(Repository.File("tests/PriceFloor.Storage.Tests/Contract"), "*.cs");
        var asked = string.Concat(contracts.Select(File.ReadAllText));
        var names = new[] { typeof(Store), typeof(Snapshot), typeof(Writing) }.SelectMany(type => type.GetMembers(Own))
            .Where(member => member is PropertyInfo or MethodInfo { IsSpecialName: false })
            .Select(member => member.Name).Distinct().Except(ofOneEngine).ToList();
        Assert.True(names.Count > 30);
        Assert.DoesNotContain(names, name => !Regex.IsMatch(asked, $@"\b(Store|store|snapshot|writing|one)\.{name}\b",
            RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5)));
    }
}
