namespace PriceFloor.Api.Tests.ManyStudios;

/// <summary>The same on PostgreSQL.</summary>
public sealed class TransferOnServerTests : TransferTests
{
    private protected override bool IsOnServer => true;
}
