using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>The lines of a plan that are sold in one season on one channel: what they come to in the year.</summary>
internal sealed class SoldGroup<T> where T : IFigure<T>
{
    /// <param name="season">The number of the season among those that lines have, from 0.</param>
    /// <param name="channel">The number of the channel.</param>
    /// <param name="lines">The lines, from 0.</param>
    /// <param name="formulas">The formulas of all lines.</param>
    /// <param name="taxed">All lines if the channel's sales tax comes to the studio, else null.</param>
    /// <param name="number">The number of the group, 1 first.</param>
    public SoldGroup(int season, int channel, IReadOnlyList<int> lines, IReadOnlyList<PlannedLineFormulas<T>> formulas,
        IReadOnlyList<PlannedLine>? taxed, int number)
    {
        (Season, Channel, Lines) = (season, channel, lines);
        Hours = T.Named("groupHours", number, Sum(line => formulas[line].BenchHours));
        Proceeds = T.Named("groupProceeds", number, Sum(line => formulas[line].Proceeds));
        Materials = T.Named("groupMaterials", number, Sum(line => MaterialsOf(formulas[line])));
        Contribution = T.Named("groupContribution", number, Proceeds - Materials);
        SalesTax = taxed is null || taxed[lines[0]].Sale.Channel.SalesTax.Rate == 0 ? 0
            : T.Named("groupSalesTax", number, Sum(line => formulas[line].Units * SalesTaxOf(taxed[line].Sale)));

        T Sum(Func<int, T> figure)
        {
            var sum = figure(lines[0]);
            for (var i = 1; i < lines.Count; i++)
                sum += figure(lines[i]);
            return sum;
        }
    }

    public int Season { get; }

    public int Channel { get; }

    public IReadOnlyList<int> Lines { get; }

    public T Hours { get; }

    public T Proceeds { get; }

    /// <summary>Less what seconds bring.</summary>
    public T Materials { get; }

    public T Contribution { get; }

    /// <summary>Sales tax that buyers pay and that stays with the studio until it is paid on; 0 if the channel pays it itself.</summary>
    public T SalesTax { get; }

    /// <summary>Materials of a line's year less what its seconds bring.</summary>
    public static T MaterialsOf(PlannedLineFormulas<T> line) => line.Units * (line.Each.Materials - line.Each.SecondsCredit);

    /// <summary>v*(x + S/n)*(1-l)*(1-q)/(1-q*r): sales tax that a piece brings for each that leaves for good.</summary>
    private static T SalesTaxOf(Sale sale)
    {
        var channel = sale.Channel;
        T share = channel.Returns.Share;
        return channel.SalesTax.Rate * ((T)sale.AfterDiscount + (T)sale.ShippingCharged / channel.PiecesPerOrder) * (1 - (T)channel.LossShare)
            * (1 - share) / (1 - share * channel.Returns.ResaleShare);
    }
}
