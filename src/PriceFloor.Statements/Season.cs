namespace PriceFloor.Statements;

/// <summary>
/// How a year's sales are spread over its twelve months: weights of which only the proportions count. Months are those of the profile's year.
/// </summary>
public sealed class Season
{
    private readonly IReadOnlyList<decimal> _weights;

    private Season(IReadOnlyList<decimal> weights) => _weights = weights;

    /// <summary>Null unless there are twelve weights, none negative and at least one positive.</summary>
    public static Season? Of(IReadOnlyList<decimal> weights) =>
        weights.Count == 12 && weights.All(weight => weight >= 0) && weights.Any(weight => weight > 0) ? new Season(weights) : null;

    /// <summary>
    /// The share of the season that has passed: whole months, and the running month by its days. Of [1, 1, 2, 0, ...] from 1 January to 15 February:
    /// (1 + 15/28) / 4 = 0.3839.
    /// </summary>
    /// <param name="soFar">From the first day of the year to the last day known.</param>
    public decimal ShareGone(Period soFar)
    {
        decimal gone = 0;
        for (var month = 0; month < 12 && soFar.From.AddMonths(month) is var first && first <= soFar.To; month++)
        {
            var days = first.AddMonths(1).DayNumber - first.DayNumber;
            gone += _weights[month] * int.Min(days, soFar.To.DayNumber - first.DayNumber + 1) / days;
        }

        return gone / _weights.Sum();
    }
}
