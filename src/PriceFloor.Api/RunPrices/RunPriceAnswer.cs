using System.Text.Json.Serialization;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.RunPrices;

/// <summary>One run: so many pieces made for one order, with one setup and whole loads.</summary>
public sealed record RunPriceAnswer
{
    /// <summary>Good pieces.</summary>
    /// <example>24</example>
    [WholeNumber]
    public required decimal Quantity { get; init; }

    /// <summary>What a piece of the run must bring in, after everything that the channel takes; rounded up.</summary>
    /// <example>51.00</example>
    public required decimal Floor { get; init; }

    /// <summary>Bench hours of the whole run, up to four decimals.</summary>
    /// <example>19.1267</example>
    public required decimal BenchHours { get; init; }

    /// <summary>The smallest total for the run whose net reaches its floor, on the currency's minor unit.</summary>
    /// <example>1281.94</example>
    public required decimal FloorTotal { get; init; }

    /// <summary>The floor total over the pieces, rounded up.</summary>
    /// <example>53.42</example>
    public required decimal PerPiece { get; init; }

    /// <summary>The discount off the floor total of one piece that the quantity really earns, in steps of 0.001, rounded down; 0 for one.</summary>
    /// <example>0.404</example>
    public required decimal Earned { get; init; }

    /// <summary>Pieces to start: on average, or with sure so many that enough come out good with that chance. Up to four decimals.</summary>
    /// <example>25.7787</example>
    public required decimal Starts { get; init; }

    /// <summary>Whole pieces to start so that enough come out good with a chance of 0.9, or of sure.</summary>
    /// <example>27</example>
    [WholeNumber]
    public required decimal StartsToBeSure { get; init; }

    /// <summary>One piece fewer, if that saves a whole load and has the lower floor a piece; else null.</summary>
    /// <example>23</example>
    [WholeNumber]
    public decimal? QuantityJustBelow { get; init; }

    /// <summary>The price listed for one on the channel.</summary>
    /// <example>58.00</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? ListedPrice { get; init; }

    /// <summary>
    /// Where a price is listed: the most that may be taken off it for the whole run, in steps of 0.001. Null if the run falls short even at the
    /// listed price.
    /// </summary>
    /// <example>0.079</example>
    [PresentWith(nameof(ListedPrice))]
    public decimal? MostOff { get; init; }
}
