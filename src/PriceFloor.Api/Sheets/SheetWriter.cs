using System.Globalization;
using System.IO.Pipelines;

namespace PriceFloor.Api.Sheets;

/// <summary>
/// Writes a caller's sheet back with our columns: at its right, or in place if the sheet has them. The caller's cells and line ends pass unchanged,
/// blank lines too, so line for line the answer matches the sheet. Every other row has exactly as many fields as the header: a short row is filled up
/// with empty cells. A row whose bytes cannot be split into these columns (wrong quotes, too many fields) becomes one quoted, defused text in its
/// first column, and one that was too long to be kept leaves its cells empty. Bytes that are not UTF-8 come back as replacement characters.
/// </summary>
public sealed class SheetWriter : IDisposable
{
    private readonly SheetOutput _output;
    private readonly SheetHeader _header;

    /// <summary>For each of the sheet's columns the answer's that replaces it, or -1.</summary>
    private readonly int[] _replaced;
    private readonly int[] _appended;
    private readonly AnswerColumn[] _answers;
    private readonly int _firstOwn;

    public SheetWriter(PipeWriter pipe, SheetHeader header, SheetColumns columns, SheetDialect dialect)
    {
        (_output, _header) = (new SheetOutput(pipe, dialect), header);
        _answers = [.. columns.Answers];
        var places = columns.AnswerPlaces.ToArray();
        _replaced = [.. Enumerable.Range(0, header.Count).Select(column => Array.IndexOf(places, column))];
        _appended = [.. Enumerable.Range(0, places.Length).Where(answer => places[answer] < 0)];
        _firstOwn = Array.IndexOf(_replaced, -1);
    }

    /// <summary>The size at which to flush; a larger sheet is still taken.</summary>
    public bool IsFull => _output.IsFull;

    public ValueTask FlushAsync(CancellationToken cancel) => _output.FlushAsync(cancel);

    public void WriteHeader()
    {
        if (_header.HasMark)
            _output.Raw("\uFEFF"u8);
        for (var column = 0; column < _header.Count; column++)
        {
            if (column > 0)
                _output.Separator();
            _output.Raw(_header.Field(column));
        }

        foreach (var answer in _appended)
        {
            _output.Separator();
            _output.Text(SheetColumns.NameOf(_answers[answer]));
        }

        _output.Raw(_header.LineEnd.Span);
    }

    /// <summary>A row with its answer. A row with a fault gets the fault instead, and a blank line stays blank.</summary>
    public void Write(SheetRow row, in SheetAnswer answer)
    {
        if (row.Fault is { } fault)
            WriteFaulty(row, new(Problem: string.Create(CultureInfo.InvariantCulture, $"Line {fault.Line}, column {fault.Column}: {fault.Detail}")));
        else if (row.IsBlank)
            WriteBlank(row);
        else
            WriteSound(row, answer);
        _output.Raw(row.LineEnd);
    }

    public void Dispose() => _output.Dispose();

    private void WriteSound(SheetRow row, in SheetAnswer answer)
    {
        if (_appended.Length == _answers.Length)
            _output.Raw(row.Raw);
        else
            for (var column = 0; column < _replaced.Length; column++)
                WriteCell(column, row.Field(column), answer);
        WriteAppended(answer);
    }

    /// <summary>An empty line stays one; a row of empty cells gets empty answers, so every row has as many cells as the header.</summary>
    private void WriteBlank(SheetRow row)
    {
        if (row.Count == 1)
            _output.Raw(row.Raw);
        else
            WriteFaulty(row, new());
    }

    private void WriteFaulty(SheetRow row, in SheetAnswer answer)
    {
        var isWhole = row.Count > 0 && row.Count <= _replaced.Length;
        for (var column = 0; column < _replaced.Length; column++)
            if (!isWhole && column == _firstOwn)
                WriteLost(column, row);
            else
                WriteCell(column, isWhole && column < row.Count ? SheetText.Readable(row.Field(column)) : default, answer);
        WriteAppended(answer);
    }

    private void WriteLost(int column, SheetRow row)
    {
        if (column > 0)
            _output.Separator();
        if (!row.Raw.IsEmpty)
            _output.Text(SheetText.Readable(row.Raw), alwaysQuoted: true);
    }

    private void WriteCell(int column, ReadOnlySpan<byte> own, in SheetAnswer answer)
    {
        if (column > 0)
            _output.Separator();
        if (_replaced[column] < 0)
            _output.Raw(own);
        else
            WriteAnswer(_replaced[column], answer);
    }

    private void WriteAppended(in SheetAnswer answer)
    {
        foreach (var index in _appended)
        {
            _output.Separator();
            WriteAnswer(index, answer);
        }
    }

    private void WriteAnswer(int index, in SheetAnswer answer)
    {
        switch (_answers[index])
        {
            case AnswerColumn.Verdict:
                Write(answer.Verdict);
                break;
            case AnswerColumn.FloorPrice:
                Write(answer.FloorPrice);
                break;
            case AnswerColumn.TargetPrice:
                Write(answer.TargetPrice);
                break;
            case AnswerColumn.ShortBy:
                Write(answer.ShortBy);
                break;
            default:
                Write(answer.Problem);
                break;
        }
    }

    private void Write(decimal? number)
    {
        if (number is { } known)
            _output.Number(known);
    }

    private void Write(string? text)
    {
        if (text is not null)
            _output.Text(text);
    }
}

/// <summary>The answer for one row; a missing value is an empty cell.</summary>
public readonly record struct SheetAnswer(string? Verdict = null, decimal? FloorPrice = null, decimal? TargetPrice = null,
    string? Problem = null, decimal? ShortBy = null);
