namespace PriceFloor.Api.Http.Reading;

/// <summary>The first fault that makes a body unreadable: it is reported alone.</summary>
public sealed class UnreadableException(InputError error) : Exception(error.Detail)
{
    public InputError Error { get; } = error;
}
