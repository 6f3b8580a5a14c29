namespace PriceFloor.Api.Http;

/// <summary>A value that is one of several types, for the contract.</summary>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Struct)]
public sealed class EitherOfAttribute(params Type[] types) : Attribute
{
    public IReadOnlyList<Type> Types { get; } = types;
}
