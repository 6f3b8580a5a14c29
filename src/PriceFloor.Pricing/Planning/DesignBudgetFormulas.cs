using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning;

/// <summary>The formulas of a <see cref="DesignBudget"/>.</summary>
internal readonly struct DesignBudgetFormulas<T> where T : IFigure<T>
{
    private readonly T _perBenchHour, _sellingHours;
    private readonly bool _sells;

    /// <param name="year">Whose hours have to be paid for.</param>
    /// <param name="sale">What the market pays.</param>
    /// <param name="given">The materials, or else the bench minutes, of one sold piece.</param>
    /// <param name="byMaterials">Whether the materials are given.</param>
    public DesignBudgetFormulas(StudioYear year, Sale sale, decimal given, bool byMaterials)
    {
        _perBenchHour = T.Named("perBenchHour", year.PerBenchHour);
        _sells = SellingTerms.TakesTime(sale.Channel);
        _sellingHours = ChannelFloorFormulas<T>.SellingHoursOn(sale.Channel);
        T net = T.Named("net", sale.Net);
        Room = T.Named("room", byMaterials ? net - given
            : _sells ? net - _perBenchHour * (given / (T)60 + _sellingHours)
            : net - _perBenchHour * given / 60);
    }

    public T Room { get; }

    public T SellingHours => _sellingHours;

    /// <summary>Valid if the materials are given and an hour has a price; 0 or less if selling takes it all.</summary>
    public T Minutes => T.Named("minutes", (_sells ? Room / _perBenchHour - _sellingHours : Room / _perBenchHour) * 60);
}
