namespace PriceFloor.Api.Tests.ManyStudios;

/// <summary>The same on PostgreSQL.</summary>
public sealed class IsolationOnServerTests : IsolationTests
{
    private protected override bool IsOnServer => true;
}
