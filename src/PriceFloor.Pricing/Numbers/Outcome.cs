namespace PriceFloor.Pricing.Numbers;

/// <summary>A result, or the reasons why there is none.</summary>
public sealed class Outcome<T> where T : class
{
    private Outcome(T? value, IReadOnlyList<Fault> faults) => (Found, Faults) = (value, faults);

    /// <summary>The result, or null if there are faults.</summary>
    public T? Found { get; }

    public IReadOnlyList<Fault> Faults { get; }

    /// <summary>The result. Asking for it when there is none is a bug.</summary>
    public T Value => Found ?? throw new InvalidOperationException($"No {typeof(T).Name}: {Faults[0].Code}");

    public static implicit operator Outcome<T>(T value) => new(value, []);

    public static implicit operator Outcome<T>(Fault fault) => new(null, [fault]);

    public static implicit operator Outcome<T>(List<Fault> faults) => new(null, faults);

    /// <summary>The same for a result whose type is an interface, which no conversion can take.</summary>
    internal static Outcome<T> From(T value) => new(value, []);

    /// <summary>Runs a computation whose figures may pass exactness: then the outcome is <see cref="Fault.TooLarge"/>.</summary>
    internal static Outcome<T> Guard(Func<Outcome<T>> compute)
    {
        try
        {
            return compute();
        }
        catch (Exception e) when (e is OverflowException or DivideByZeroException) // a divisor below 10^-28 is zero
        {
            return Fault.TooLarge;
        }
    }
}
