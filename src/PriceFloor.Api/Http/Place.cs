namespace PriceFloor.Api.Http;

/// <summary>Where a question comes from: a query, a body, or a part of a body.</summary>
public readonly record struct Place
{
    private readonly string? _pointer;

    private Place(string? pointer) => _pointer = pointer;

    /// <summary>The query, where names are exact.</summary>
    public static Place Query => new(null);

    /// <summary>The whole body.</summary>
    public static Place Body => new("#");

    public bool IsQuery => _pointer is null;

    /// <summary>The place of what the body says for all of its parts; a query has no parts.</summary>
    public Place Whole => IsQuery ? Query : Body;

    /// <summary>A part of the body.</summary>
    /// <param name="pointer">Its JSON pointer, such as <c>#/lines/3</c>.</param>
    public static Place In(string pointer) => new(pointer);

    /// <summary>A fault of one field there.</summary>
    public InputError Error(string field, Code code, string detail) => IsQuery
        ? new InputError { Parameter = field, Code = code, Detail = detail }
        : new InputError { Pointer = $"{_pointer}/{field}", Code = code, Detail = detail };
}
