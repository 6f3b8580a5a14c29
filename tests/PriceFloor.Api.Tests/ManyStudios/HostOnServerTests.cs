namespace PriceFloor.Api.Tests.ManyStudios;

/// <summary>The same on PostgreSQL, where each studio has rows of its own.</summary>
public sealed class HostOnServerTests : HostTests
{
    private protected override bool IsOnServer => true;
}
