namespace PriceFloor.Api.Http;

/// <summary>A figure of an answer that never has decimals: an integer in the contract.</summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class WholeNumberAttribute : Attribute;
