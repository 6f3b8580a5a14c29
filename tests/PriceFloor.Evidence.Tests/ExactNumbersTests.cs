using System.Reflection;
using PriceFloor.Evidence.Lines;
using Xunit;

namespace PriceFloor.Evidence.Tests;

/// <summary>Money and counts are exact: binary floating point is only in the folder of statistics, and leaves it only as decimals.</summary>
public sealed class ExactNumbersTests
{
    private const string Statistics = "PriceFloor.Evidence.Statistics";

    private const BindingFlags All = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static
        | BindingFlags.DeclaredOnly;

    [Fact]
    public void Only_statistics_know_binary_floating_point() => Assert.Empty(typeof(Movement).Assembly.GetTypes()
        .Where(type => type.Namespace != Statistics && type.Namespace?.StartsWith("PriceFloor", StringComparison.Ordinal) == true)
        .SelectMany(type => type.GetMembers(All)).Where(member => TypesOf(member).Any(IsBinary))
        .Select(member => $"{member.DeclaringType}.{member.Name}"));

    [Fact]
    public void Statistics_give_no_binary_number_to_other_projects() => Assert.Empty(typeof(Movement).Assembly.GetExportedTypes()
        .SelectMany(type => type.GetMembers(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly))
        .Where(member => TypesOf(member, within: false).Any(IsBinary)).Select(member => $"{member.DeclaringType}.{member.Name}"));

    [Theory]
    [InlineData(typeof(double))]
    [InlineData(typeof(float?))]
    [InlineData(typeof(double[]))]
    [InlineData(typeof(Func<decimal, double>))]
    public void The_check_sees_it_wherever_it_hides(Type type) => Assert.True(IsBinary(type));

    private static IEnumerable<Type> TypesOf(MemberInfo member, bool within = true) => member switch
    {
        FieldInfo field => [field.FieldType],
        PropertyInfo property => [property.PropertyType],
        MethodInfo method => [method.ReturnType, .. Inside(method, within)],
        ConstructorInfo constructor => Inside(constructor, within),
        _ => [],
    };

    private static IEnumerable<Type> Inside(MethodBase method, bool within) =>
        [
            .. method.GetParameters().Select(parameter => parameter.ParameterType),
            .. within ? method.GetMethodBody()?.LocalVariables.Select(local => local.LocalType) ?? [] : [],
        ];

    private static bool IsBinary(Type type) =>
        type == typeof(double) || type == typeof(float) || type == typeof(Half)
        || (type.HasElementType && IsBinary(type.GetElementType()!))
        || (type.IsGenericType && type.GetGenericArguments().Any(IsBinary));
}
