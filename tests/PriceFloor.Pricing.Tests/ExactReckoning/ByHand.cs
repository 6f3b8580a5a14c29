namespace PriceFloor.Pricing.Tests.ExactReckoning;

/// <summary>
/// The model calculated a second time, in whole-number fractions and straight from its formulas: no code is shared with the library.
/// </summary>
public static class ByHand
{
    public sealed record Year(Fraction Expenses, Fraction Traced, Fraction Household, Fraction Need, Fraction Profit, Fraction Revenue,
        Fraction BenchMustEarn, Fraction Workdays, Fraction BenchHours, Fraction CarryingHours)
    {
        public Fraction PerBenchHour => BenchMustEarn / CarryingHours;
    }

    public sealed record OnePiece(Fraction Starts, Fraction Hours, Fraction Materials, Fraction Seconds, Fraction Floor,
        Fraction PiecesPerYear, Fraction? FloorWithinLimit);

    public static Year YearOf(CostProfile p, DateOnly start)
    {
        Fraction Sum<T>(IEnumerable<T> lines, Func<T, Fraction> of) => lines.Aggregate((Fraction)0m, (sum, line) => sum + of(line));
        Fraction A(IRecurring line) => (Fraction)line.Amount * line.Per switch
        { Per.Week => 52m, Per.Fortnight => 26m, Per.FourWeeks => 13m, Per.Month => 12m, Per.Quarter => 4m, Per.Time => line.Times!.Value, _ => 1m };

        var deductible = p.Expenses.Where(line => line.Deductible).ToList();
        var notDeductible = Sum(p.Expenses.Where(line => !line.Deductible), A);
        var expenses = Sum(deductible, A) + Sum(p.Equipment, thing => Wear(thing, start)) + Sum(p.Household, line => A(line) * line.BusinessShare);
        var traced = Sum(deductible.Where(line => line.TracedTo != null), A);
        var household = Sum(p.Household, line => A(line) * (1 - line.BusinessShare)) + notDeductible;
        var net = Sum(p.OtherIncome.Where(line => line.Kind == IncomeKind.Net), A);
        var taxable = Sum(p.OtherIncome.Where(line => line.Kind == IncomeKind.Taxable), A);
        var days = (Fraction)p.Calendar.WeeksPerYear * p.Calendar.DaysPerWeek - Sum(p.OtherIncome, line => line.DaysPerYear);
        var hours = days * p.Calendar.HoursPerDay * p.Calendar.BenchShare + Sum(p.Helpers, helper => helper.BenchHoursPerYear);
        var need = Fraction.Max(0m, household - net);
        if (p.Pay is { } pay)
            need = Fraction.Max(need, pay.Amount * (pay.Per switch
            {
                PayPer.Hour => days * p.Calendar.HoursPerDay,
                PayPer.Week => 52m,
                PayPer.Month => 12m,
                _ => 1m,
            }) + notDeductible);

        var profit = ProfitLeaving(p.Tax, need);
        return new Year(expenses, traced, household, need, profit, Fraction.Max(0m, expenses + profit - taxable),
            Fraction.Max(0m, expenses - traced + profit - taxable), days, hours,
            (hours + days * p.Calendar.HoursPerDay * p.Calendar.SellingShare) * p.Calendar.NormalUse);
    }

    public static Fraction TaxOn(TaxRules rules, Fraction profit)
    {
        if (rules.Kind == TaxKind.None)
            return 0m;
        if (rules.Kind == TaxKind.Flat)
            return profit * rules.Rate!.Value;
        var paid = new List<Fraction>();
        foreach (var levy in rules.Levies)
        {
            var charged = profit * levy.Share + levy.OtherBase - levy.Allowance;
            for (var j = 0; j < paid.Count; j++)
                charged -= paid[j] * rules.Levies[j].DeductibleShare;
            paid.Add(InBands(levy, Fraction.Max(0m, charged)) - InBands(levy, Fraction.Max(0m, (Fraction)levy.OtherBase - levy.Allowance)));
        }

        return paid.Aggregate((Fraction)0m, (sum, levy) => sum + levy);
    }

    /// <summary>Halving down to 10^-15 around the answer, then the straight line between the two ends.</summary>
    private static Fraction ProfitLeaving(TaxRules rules, Fraction need)
    {
        Fraction Kept(Fraction profit) => profit - TaxOn(rules, profit);
        Fraction low = 0m, high = 1m;
        if (need <= 0m)
            return 0m;
        while (Kept(high) < need)
            high *= 2m;
        while (high - low > 0.000000000000001m)
        {
            var middle = (low + high) / 2m;
            if (Kept(middle) >= need)
                high = middle;
            else
                low = middle;
        }

        return low + (need - Kept(low)) * (high - low) / (Kept(high) - Kept(low));
    }

    public static OnePiece PieceOf(Design design, CostProfile profile, Year year)
    {
        var steps = design.Making.Steps ?? [];
        var entering = new Fraction[steps.Count];
        Fraction survive = 1m;
        for (var i = steps.Count - 1; i >= 0; i--)
            entering[i] = 1m / (survive *= steps[i].GoodShare);
        var starts = steps.Count > 0 ? entering[0] : 1m / (Fraction)design.Making.GoodShare;
        var calendar = profile.Calendar;
        var minutes = design.Making switch
        {
            { PiecesPerDay: { } n } => starts * 60m * calendar.HoursPerDay * calendar.BenchShare / n,
            { PiecesPerBenchDay: { } n } => starts * 60m * calendar.HoursPerDay / n,
            { MinutesPerPiece: { } m } => starts * m,
            _ => steps.Select((step, i) => entering[i]
                * ((Fraction)step.HandsOnMinutes / step.BatchSize + (Fraction)(step.Rework?.Share ?? 0) * (step.Rework?.Minutes ?? 0)))
                    .Aggregate((Fraction)0m, (a, b) => a + b),
        };
        var hours = (minutes + starts * design.Making.SetupMinutes / (design.Making.RunSize ?? 1)) / 60m;
        Fraction materials = 0m;
        foreach (var line in design.Materials)
        {
            var at = line.At switch { "start" => starts, "finish" => 1m, var name => entering[steps.ToList().FindIndex(step => step.Name == name)] };
            var cost = line.Material is { } material
                ? (Fraction)profile.Materials.Single(stock => stock.Material == material).Price * line.Quantity!.Value
                    / (1 - line.WasteShare) / line.BatchSize
                : (Fraction)line.Amount!.Value;
            materials += cost * at;
        }

        var seconds = design.Seconds is { } s ? (Fraction)s.Share * s.Price * (starts - 1m) : 0m;
        Fraction sold = design.SoldShare ?? profile.SoldShare;
        var once = design.Development ?? new Development { Pieces = 1 };
        var (t, used, c) = (hours / sold + (Fraction)once.Hours / once.Pieces, materials / sold + (Fraction)once.Cost / once.Pieces, seconds / sold);
        var inTheHours = year.BenchHours * calendar.NormalUse / t;
        var (most, within) = (inTheHours, (Fraction?)null);
        foreach (var limit in profile.Limits)
        {
            var loads = steps.Select((step, i) => step.Uses == limit.Name ? entering[i] / step.BatchSize : 0m)
                .Aggregate((Fraction)0m, (a, b) => a + b) / sold;
            if (loads > 0m && limit.LoadsPerYear / loads < most)
            {
                most = limit.LoadsPerYear / loads;
                within = most > 0m ? Fraction.Max(0m, year.BenchMustEarn / most + used - c) : null;
            }
        }

        return new OnePiece(starts, t, used, c, Fraction.Max(0m, year.PerBenchHour * t + used - c), most, within);
    }

    /// <summary>What a piece must bring in on a channel, and the hours of selling in it.</summary>
    public static (Fraction Hours, Fraction Floor) FloorOn(Channel channel, OnePiece piece, Year year)
    {
        var hours = ((Fraction)channel.Selling.MinutesPerOrder / channel.PiecesPerOrder + channel.Selling.MinutesPerPiece) / 60m
            + (channel.Stall is { } stall ? (Fraction)stall.Hours / stall.Pieces : 0m);
        return (hours, Fraction.Max(0m, year.PerBenchHour * (piece.Hours + hours) + piece.Materials - piece.Seconds));
    }

    public static (Fraction Net, Fraction BeforeTax) NetOf(Fraction price, Channel channel)
    {
        Fraction v = channel.SalesTax.Rate, n = channel.PiecesPerOrder, q = channel.Returns.Share;
        var listed = channel.SalesTax.Included ? price / (1m + v) : price;
        var x = listed * (1 - channel.UsualDiscount);
        var shipping = channel.SalesTax.Included ? channel.Shipping.Charged / (1m + v) : channel.Shipping.Charged;
        var paid = (n * x + shipping) * (1m + v);
        Fraction fees = 0m;
        foreach (var fee in channel.Fees)
        {
            var raw = fee.Rate * (fee.Of switch { FeeBase.Price => n * x, FeeBase.PriceAndShipping => n * x + shipping, _ => paid }) + fee.Fixed;
            if (fee.Minimum is { } least) raw = Fraction.Max(raw, least);
            if (fee.Maximum is { } most) raw = Fraction.Min(raw, most);
            fees += raw;
        }

        var perPiece = channel.CostPerPiece + (channel.Stall is { } stall ? (Fraction)stall.Cost / stall.Pieces : 0m);
        var keep = x * (1 - channel.ShopShare) + (shipping - channel.Shipping.Cost - fees) / n - perPiece;
        var lost = (channel.Returns.FeesRefunded ? 0m : fees) / n + (channel.Shipping.Cost + channel.Shipping.ReturnCost) / n + perPiece;
        var net = ((1m - q) * keep - q * lost) / (1m - q * channel.Returns.ResaleShare);
        return ((1 - channel.LossShare) * net - (Fraction)channel.LossShare * channel.CostPerPiece, listed);
    }

    private static Fraction InBands(Levy levy, Fraction charged)
    {
        Fraction sum = 0m, lower = 0m;
        foreach (var band in levy.Bands)
        {
            var top = band.UpTo is { } upTo ? Fraction.Min(charged, upTo) : charged;
            sum += Fraction.Max(0m, top - lower) * band.Rate;
            lower = band.UpTo ?? lower;
        }

        return sum;
    }

    /// <summary>Month by month, where the library counts whole spans.</summary>
    private static Fraction Wear(Equipment thing, DateOnly start)
    {
        var first = new DateOnly(start.Year, start.Month, 1);
        var since = thing.InService is { } day ? new DateOnly(day.Year, day.Month, 1) : first;
        var rule = thing.Depreciation;
        if (rule.Method == DepreciationMethod.StraightLine)
        {
            var inLife = Enumerable.Range(0, 12)
                .Count(month => first.AddMonths(month) >= since && first.AddMonths(month) < since.AddMonths((int)(rule.LifeYears!.Value * 12)));
            return ((Fraction)thing.Cost - thing.Salvage) / rule.LifeYears!.Value * inLife / 12m;
        }

        if (since >= first.AddMonths(12))
            return 0m;
        var (year, index) = (first, 1);
        while (since < year)
            (year, index) = (year.AddMonths(-12), index + 1);
        if (rule.Method == DepreciationMethod.Percentages)
            return index <= rule.Percentages!.Count ? (Fraction)thing.Cost * rule.Percentages[index - 1] : 0m;

        var months = Enumerable.Range(0, 12).Count(month => year.AddMonths(month) >= since);
        Fraction book = thing.Cost;
        var lost = Fraction.Min(book * rule.Rate!.Value * months / 12m, book - thing.Salvage);
        for (var later = 2; later <= index; later++)
        {
            book -= lost;
            lost = Fraction.Min(book * rule.Rate!.Value, book - thing.Salvage);
        }

        return lost;
    }
}
