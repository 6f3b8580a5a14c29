namespace PriceFloor.Api.Http;

/// <summary>A figure of an answer that never has decimals: the contract calls it an integer.</summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class WholeNumberAttribute : Attribute;
