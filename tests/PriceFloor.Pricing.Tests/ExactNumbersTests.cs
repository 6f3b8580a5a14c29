using System.Reflection;
using Xunit;

namespace PriceFloor.Pricing.Tests;

/// <summary>Money, rates and hours are exact decimals: binary floating point has no place in the pricing library, not even inside a list.</summary>
public sealed class ExactNumbersTests
{
    private const BindingFlags All = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static
        | BindingFlags.DeclaredOnly;

    [Fact]
    public void No_member_knows_binary_floating_point()
    {
        var members = typeof(StudioYear).Assembly.GetTypes().SelectMany(type => type.GetMembers(All)).ToList();
        Assert.True(members.Count > 500);
        Assert.Empty(members.Where(member => TypesOf(member).Any(IsBinary)).Select(member => $"{member.DeclaringType}.{member.Name}"));
    }

    [Theory]
    [InlineData(typeof(double))]
    [InlineData(typeof(float?))]
    [InlineData(typeof(Half))]
    [InlineData(typeof(double[]))]
    [InlineData(typeof(Dictionary<string, List<float>>))]
    [InlineData(typeof(Func<decimal, double>))]
    public void The_check_sees_it_wherever_it_hides(Type type) => Assert.True(IsBinary(type));

    [Theory]
    [InlineData(typeof(decimal?))]
    [InlineData(typeof(IReadOnlyList<decimal>))]
    [InlineData(typeof(Func<decimal, bool>))]
    public void The_check_lets_exact_numbers_pass(Type type) => Assert.False(IsBinary(type));

    private static IEnumerable<Type> TypesOf(MemberInfo member) => member switch
    {
        FieldInfo field => [field.FieldType],
        PropertyInfo property => [property.PropertyType],
        MethodInfo method => [method.ReturnType, .. Inside(method)],
        ConstructorInfo constructor => Inside(constructor),
        _ => [],
    };

    private static IEnumerable<Type> Inside(MethodBase method) =>
        [
            .. method.GetParameters().Select(parameter => parameter.ParameterType),
            .. method.GetMethodBody()?.LocalVariables.Select(local => local.LocalType) ?? [],
        ];

    private static bool IsBinary(Type type) =>
        type == typeof(double) || type == typeof(float) || type == typeof(Half)
        || (type.HasElementType && IsBinary(type.GetElementType()!))
        || (type.IsGenericType && type.GetGenericArguments().Any(IsBinary));
}
