using System.Text.Json;
using FluentValidation;
using FluentValidation.Results;

namespace PriceFloor.Api.Http.Reading;

/// <summary>
/// What validators share. Ranges, lengths and words are on the documents themselves and are checked while reading. Validators have the rules between
/// fields, and ask the model for its own. None of them uses the store.
/// </summary>
public static class Rules
{
    private const string Unsound = "unsound";
    private const string Certain = "certain";

    /// <summary>
    /// The validator's faults as pointers. Faults about a value that reading already refused are left out.
    /// </summary>
    public static IEnumerable<InputError> Faults<T>(IValidator<T> validator, T value, IReadOnlyList<InputError> already)
    {
        var unsound = already.Select(fault => fault.Pointer!).ToList();
        var context = new ValidationContext<T>(value);
        context.RootContextData[Unsound] = unsound;
        return validator.Validate(context).Errors
            .Where(failure => failure.CustomState as string == Certain || IsSound(unsound, PointerOf(failure.PropertyName)))
            .Select(failure => new InputError
            {
                Pointer = PointerOf(failure.PropertyName),
                Code = InputCodes.Named(failure.ErrorCode),
                Detail = failure.ErrorMessage,
            });
    }

    /// <summary>The faults of an inline document, with pointers from the root of the document around it.</summary>
    public static IEnumerable<Fault> Below<TOuter, T>(IValidator<T> validator, T value, string at, ValidationContext<TOuter> outer)
    {
        var prefix = $"#/{at}";
        var all = (List<string>)outer.RootContextData[Unsound];
        if (all.Exists(pointer => pointer == prefix || prefix.StartsWith(pointer + "/", StringComparison.Ordinal)))
            return [];
        var unsound = all.Where(pointer => pointer.StartsWith(prefix + "/", StringComparison.Ordinal))
            .Select(pointer => new InputError { Pointer = "#" + pointer[prefix.Length..], Code = InputCodes.Malformed, Detail = "" });
        return Faults(validator, value, [.. unsound]).Select(fault => new Fault($"/{at}{fault.Pointer![1..]}", fault.Code, fault.Detail));
    }

    /// <summary>Adds a fault of the model, whose pointer is relative to the validated value.</summary>
    /// <param name="context">The validation.</param>
    /// <param name="fault">The fault.</param>
    /// <param name="certain">True if everything that the fault follows from is known to be valid, so it is reported even beside a fault of reading
    /// below its place.</param>
    public static void Add<T>(this ValidationContext<T> context, Fault fault, bool certain = false)
    {
        var prefix = context.PropertyChain.ToString();
        var path = fault.Pointer.TrimStart('/').Replace('/', '.');
        context.AddFailure(new ValidationFailure(string.Join('.', new[] { prefix, path }.Where(part => part.Length > 0)), fault.Detail)
        {
            ErrorCode = fault.Code,
            CustomState = certain ? Certain : null,
        });
    }

    /// <summary>Adds faults of the model.</summary>
    public static void AddAll<T>(this ValidationContext<T> context, IEnumerable<Fault> faults)
    {
        foreach (var fault in faults)
            context.Add(fault);
    }

    /// <summary>Adds a fault at a path below the validated value, such as <c>steps[2].name</c>.</summary>
    public static void Add<T>(this ValidationContext<T> context, string path, Code code, string detail) =>
        context.Add(new Fault("/" + path, code, detail));

    /// <summary>True if reading found nothing wrong at or below that place, so the model can be asked.</summary>
    public static bool IsSound<T>(this ValidationContext<T> context, params ReadOnlySpan<string> paths)
    {
        var unsound = (List<string>)context.RootContextData[Unsound];
        var prefix = PointerOf(context.PropertyChain.ToString());
        foreach (var path in paths)
            if (!IsSound(unsound, prefix + path))
                return false;
        return true;
    }

    private static bool IsSound(List<string> unsound, string pointer) => !unsound.Exists(at =>
        at == pointer || at.StartsWith(pointer + "/", StringComparison.Ordinal) || pointer.StartsWith(at + "/", StringComparison.Ordinal));

    /// <summary><c>Expenses[0].Amount</c> becomes <c>#/expenses/0/amount</c>.</summary>
    private static string PointerOf(string property) => "#" + string.Concat(property
        .Replace("[", ".", StringComparison.Ordinal).Replace("]", "", StringComparison.Ordinal)
        .Split('.', StringSplitOptions.RemoveEmptyEntries).Select(part => "/" + JsonNamingPolicy.CamelCase.ConvertName(part)));
}

/// <summary>For types without rules between their fields: reading has checked each field.</summary>
public sealed class NoRules<T> : AbstractValidator<T>;
