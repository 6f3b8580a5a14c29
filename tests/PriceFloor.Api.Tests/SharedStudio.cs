namespace PriceFloor.Api.Tests;

/// <summary>One studio for each environment, for tests that store nothing (or always the same) and are many.</summary>
public sealed class SharedStudio : IAsyncDisposable
{
    private readonly Dictionary<string, Studio> _studios = [];

    public Studio Of(string environment)
    {
        if (!_studios.TryGetValue(environment, out var studio))
            _studios[environment] = studio = new Studio(environment);
        return studio;
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var studio in _studios.Values)
            await studio.DisposeAsync();
    }
}
