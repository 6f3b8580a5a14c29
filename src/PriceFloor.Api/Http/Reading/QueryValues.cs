using System.Globalization;
using System.Text.Json;

namespace PriceFloor.Api.Http.Reading;

/// <summary>Reads query values strictly; each fault names its parameter, and all are reported at once.</summary>
public sealed class QueryValues(IQueryCollection query)
{
    private readonly List<InputError> _faults = [];

    public IReadOnlyList<InputError> Faults => _faults;

    public string? Text(string name, int most = Limits.KeyLength)
    {
        if (!query.TryGetValue(name, out var values))
            return null;
        var text = values[0] ?? "";
        if (UnseenCharacters.FaultOf(text, name) is { } unseen)
            Fault(name, InputCodes.ControlCharacter, unseen);
        else if (text.Length == 0)
            Fault(name, FaultCodes.Required, $"{name} is empty; give a value or leave it out.");
        else if (text.Length > most)
            Fault(name, InputCodes.TooLong,
                string.Create(CultureInfo.InvariantCulture, $"{name} has {text.Length} characters; at most {most} are taken."));
        else
            return text;
        return null;
    }

    public string RequiredText(string name)
    {
        if (!query.ContainsKey(name))
            Fault(name, FaultCodes.Required, $"{name} is missing.");
        return Text(name) ?? "";
    }

    public decimal RequiredNumber(string name, NumberFieldAttribute field)
    {
        if (!query.ContainsKey(name))
            Fault(name, FaultCodes.Required, $"{name} is missing.");
        return Number(name, field) ?? 0;
    }

    public decimal? Number(string name, NumberFieldAttribute field)
    {
        if (Text(name) is not { } text)
            return null;
        var (value, code, detail) = NumberText.Read(text, name, field);
        if (code is not null)
            Fault(name, code, detail!);
        return value;
    }

    public int Integer(string name, int minimum, int maximum, int fallback)
    {
        if (Text(name) is not { } text)
            return fallback;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value) && value >= minimum && value <= maximum)
            return value;
        Fault(name, FaultCodes.OutOfRange,
            string.Create(CultureInfo.InvariantCulture, $"{name} must be a whole number from {minimum} to {maximum}."));
        return fallback;
    }

    public int? IntegerOrNull(string name, int minimum, int maximum) => query.ContainsKey(name) ? Integer(name, minimum, maximum, maximum) : null;

    /// <summary>One of the words of an enum, as JSON spells them.</summary>
    public T? EnumValue<T>(string name) where T : struct, Enum
    {
        if (Text(name) is not { } text)
            return null;
        foreach (var value in Enum.GetValues<T>())
            if (JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString()) == text)
                return value;
        Fault(name, InputCodes.NotOneOf,
            $"{name} must be one of {string.Join(", ", Enum.GetNames<T>().Select(JsonNamingPolicy.KebabCaseLower.ConvertName))}.");
        return null;
    }

    public bool Boolean(string name)
    {
        if (Text(name) is not { } text)
            return false;
        if (text == "1" || text.Equals("true", StringComparison.OrdinalIgnoreCase))
            return true;
        if (text != "0" && !text.Equals("false", StringComparison.OrdinalIgnoreCase))
            Fault(name, InputCodes.NotOneOf, $"{name} must be true or false (or 1 or 0).");
        return false;
    }

    public DateTimeOffset? Time(string name)
    {
        if (Text(name) is not { } text)
            return null;
        var time = TimeText.ReadTime(text);
        if (time is null)
            Fault(name, InputCodes.NotATime,
                $"{name} must be a time with its offset, written as 2027-03-01T00:00:00Z (a + in a query is written %2B).");
        return time;
    }

    public DateOnly? Date(string name)
    {
        if (Text(name) is not { } text)
            return null;
        var date = TimeText.ReadDate(text);
        if (date is null)
            Fault(name, InputCodes.NotADate, $"{name} must be a day written as 2027-03-01.");
        return date;
    }

    /// <summary>A fault between parameters.</summary>
    public void Add(string name, Code code, string detail) => Fault(name, code, detail);

    private void Fault(string name, Code code, string detail) => _faults.Add(new InputError { Parameter = name, Code = code, Detail = detail });
}
