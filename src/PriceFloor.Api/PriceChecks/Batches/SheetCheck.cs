using System.Text;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.PriceChecks.Batches;

/// <summary>
/// Checks the rows of a sheet. A design on a channel is looked up once; after that a row costs only reading its price and a comparison, without any
/// allocation.
/// </summary>
public sealed class SheetCheck(Catalogue catalogue, SheetColumns columns, SheetHeader header, BatchQuery query, bool mayRead)
{
    private const int Longest = 3 * Limits.AliasLength;

    private static readonly PriceAttribute s_price = new() { Above = true };

    private readonly Dictionary<string, Dictionary<string, ChannelPrices?>> _known = [];

    /// <summary>The row as one line of a batch, for an answer in another format.</summary>
    public BatchLine LineOf(SheetRow row)
    {
        if (row.Fault is { } fault)
            return new BatchLine(null, [RequestFault.Unreadable(fault)], null, row.Line, 1);
        var (price, error) = PriceOf(row);
        var (sku, channel) = (Encoding.UTF8.GetString(row.Cell(columns.Sku)),
            columns.Channel is { } at ? Encoding.UTF8.GetString(row.Cell(at)) : query.Channel!);
        error ??= TextFault(row, columns.Sku, sku, Limits.AliasLength)
            ?? (columns.Channel is { } channelAt ? TextFault(row, channelAt, channel, Limits.KeyLength) : null);
        var (line, column) = row.PlaceOf(columns.Sku);
        return error is not null
            ? new BatchLine(null, [RequestFault.Invalid(error)], null, error.Line!.Value, error.Column!.Value)
            {
                Sku = Echoed(sku),
                Channel = Echoed(channel),
            }
            : new BatchLine(new PriceCheckRequest { Sku = sku, Channel = channel, Price = price }, [], null, line, column);
    }

    /// <summary>The row's answer for a sheet, and its verdict for the summary.</summary>
    public (SheetAnswer Answer, Verdict? Verdict) Check(SheetRow row)
    {
        var (price, error) = PriceOf(row);
        if (error is null && PricesOf(row) is { } prices && Rounding.HasAtMost(price, prices.Floor.UnitCost.Year.Currency.Decimals))
        {
            var verdict = prices.VerdictOf(price);
            return (AnswerOf(prices, verdict, price), verdict);
        }

        // Faults are reported in the same words as for a single check.
        var line = LineOf(row);
        var outcome = line.Checked(catalogue, mayRead);
        return outcome.Found is { } found
            ? (AnswerOf(found.Prices, found.Verdict, line.Request!.Price), found.Verdict)
            : (new SheetAnswer(Problem: line.InASheet(outcome.Faults)), null);
    }

    /// <summary>What the caller may see of the answer.</summary>
    public bool ShowsPrices { get; init; } = true;

    private SheetAnswer AnswerOf(ChannelPrices prices, Verdict verdict, decimal price)
    {
        var money = prices.Floor.UnitCost.Year.Currency;
        return ShowsPrices
            ? new SheetAnswer(VerdictText(verdict), Rounding.WithDecimals(prices.FloorPrice, money.Decimals),
                Rounding.WithDecimals(prices.TargetPrice, money.Decimals), ShortBy: mayRead ? money.RoundUp(prices.ShortBy(price)) : null)
            : new SheetAnswer(VerdictText(verdict));
    }

    private (decimal Price, InputError? Error) PriceOf(SheetRow row)
    {
        var (price, code, detail) = SheetNumber.Read(row.Cell(columns.Price), "price", s_price, query.Dialect);
        return code is null ? (price, null) : (0, ErrorAt(row, columns.Price, code, detail!));
    }

    private ChannelPrices? PricesOf(SheetRow row)
    {
        var sku = row.Cell(columns.Sku);
        var channel = columns.Channel is { } at ? row.Cell(at) : default;
        if (sku.Length > Longest || channel.Length > Longest)
            return null;
        Span<char> skuRoom = stackalloc char[Longest], channelRoom = stackalloc char[Longest];
        ReadOnlySpan<char> skuText = skuRoom[..Encoding.UTF8.GetChars(sku, skuRoom)];
        var channelText = columns.Channel is null ? query.Channel.AsSpan() : channelRoom[..Encoding.UTF8.GetChars(channel, channelRoom)];

        var designs = _known.GetAlternateLookup<ReadOnlySpan<char>>();
        if (!designs.TryGetValue(skuText, out var channels))
            _known[skuText.ToString()] = channels = [];
        var on = channels.GetAlternateLookup<ReadOnlySpan<char>>();
        if (!on.TryGetValue(channelText, out var prices))
        {
            if (channels.Count >= Limits.Lines || _known.Count > MostKnown)
                return Find(skuText.ToString(), channelText.ToString());
            channels[channelText.ToString()] = prices = Find(skuText.ToString(), channelText.ToString());
        }

        return prices;
    }

    /// <summary>A sheet full of unknown names must not fill the memory.</summary>
    private const int MostKnown = 100_000;

    private ChannelPrices? Find(string sku, string channel)
    {
        try
        {
            return catalogue.DesignNamed(sku) is { } design && catalogue.Channel(channel) is { } on
                && catalogue.Profile(design.Document.Profile) is { } profile
                && catalogue.Floor(profile, design).Found is { } floor ? floor.On(on).Found : null;
        }
        catch (DamagedDocumentException)
        {
            return null; // the line is then checked by itself, which reports what is damaged
        }
    }

    private InputError? TextFault(SheetRow row, int column, string text, int most) =>
        text.Length == 0 ? ErrorAt(row, column, FaultCodes.Required, $"{header.Names[column]} is empty.")
        : text.Length > most ? ErrorAt(row, column, InputCodes.TooLong,
            FormattableString.Invariant($"{header.Names[column]} has {text.Length} characters; at most {most} are taken."))
        : UnseenCharacters.FaultOf(text, header.Names[column]) is { } unseen ? ErrorAt(row, column, InputCodes.ControlCharacter, unseen)
        : null;

    /// <summary>A name in a row that is refused, so the caller sees which row it was.</summary>
    private static string? Echoed(string name) => name.Length is > 0 and <= Limits.AliasLength ? name : null;

    private InputError ErrorAt(SheetRow row, int column, Code code, string detail)
    {
        var (line, at) = row.PlaceOf(column);
        return new InputError { Parameter = header.Names[column], Code = code, Detail = detail, Line = line, Column = at };
    }

    private static string VerdictText(Verdict verdict) => verdict switch
    {
        Verdict.MeetsTarget => "meets-target",
        Verdict.BelowTarget => "below-target",
        _ => "below-floor",
    };
}
