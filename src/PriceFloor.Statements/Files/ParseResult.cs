namespace PriceFloor.Statements.Files;

/// <summary>The result of reading a file so far. Every line that could be a transaction ends up in exactly one of its two lists.</summary>
internal sealed class ParseResult
{
    public const int MostLines = 200_000;

    private readonly List<AccountStatement> _statements = [];
    private readonly List<RefusedLine> _refused = [];
    private int _taken;

    public bool IsFull => _taken + _refused.Count > MostLines;

    public bool IsEmpty => _statements.Count == 0;

    public static Fault TooMany { get; } =
        new("", FileCodes.TooMany, "The file has more than 200,000 lines; export it in parts, such as a year each.");

    public void Take() => _taken++;

    /// <summary>Removes a transaction that a later line corrects.</summary>
    public void Untake(int line, LineFault why)
    {
        _taken--;
        Refuse(line, why.Code, why.Detail);
    }

    public void Refuse(int line, Code code, string detail) => _refused.Add(new RefusedLine(line, code, detail));

    public void Add(AccountStatement statement) => _statements.Add(statement);

    public StatementFile As(StatementFormat format) => new()
    {
        Format = format,
        Statements = _statements,
        Refused = [.. _refused.OrderBy(refused => refused.Line)],
    };
}
