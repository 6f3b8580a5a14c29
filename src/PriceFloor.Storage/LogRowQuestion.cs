namespace PriceFloor.Storage;

/// <summary>Which rows of a list of the log to read. What is null does not matter.</summary>
public sealed record LogRowQuestion
{
    /// <summary>Rows as they stood at this position.</summary>
    public required long UpTo { get; init; }

    /// <summary>Number of the design.</summary>
    public long? Design { get; init; }

    /// <summary>
    /// Numbers of designs; null: all. They are picked while the whole list is read from its beginning to its end, which is quicker than to look
    /// each line up if they have more than a few lines in a hundred.
    /// </summary>
    public IReadOnlyCollection<long>? Designs { get; init; }

    /// <summary>Number of the channel; bench entries have none.</summary>
    public long? Place { get; init; }

    /// <summary>Numbers of sources.</summary>
    public IReadOnlyCollection<long>? Sources { get; init; }

    /// <summary>First day, as days since 0001-01-01.</summary>
    public int? From { get; init; }

    /// <summary>Last day.</summary>
    public int? To { get; init; }

    internal IReadOnlyList<(string Name, long? Value)> Parameters =>
        [("@UpTo", UpTo), ("@Design", Design), ("@Place", Place), ("@From", From), ("@To", To)];

    /// <summary>What most rows fail comes first: the rest of them is not looked at.</summary>
    internal string Condition
    {
        get
        {
            var condition = Designs is null ? "" : AmongDesigns(Designs) + " AND ";
            condition += "line.position <= @UpTo AND (line.ended IS NULL OR line.ended > @UpTo)";
            if (Design is not null)
                condition += " AND line.design = @Design";
            if (Place is not null)
                condition += " AND line.place = @Place";
            if (Sources is not null)
                condition += $" AND line.source IN ({string.Join(',', Sources)})";
            return condition + (From is null ? "" : " AND line.day >= @From") + (To is null ? "" : " AND line.day <= @To");
        }
    }

    /// <summary>An index would not serve a column with a sign. The designs' numbers mostly follow each other.</summary>
    private static string AmongDesigns(IReadOnlyCollection<long> designs)
    {
        var (first, last) = (designs.Min(), designs.Max());
        var between = $"+line.design BETWEEN {first} AND {last}";
        return last - first + 1 == designs.Count ? between : $"{between} AND +line.design IN ({string.Join(',', designs)})";
    }
}
