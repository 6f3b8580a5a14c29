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

    internal string Condition
    {
        get
        {
            var condition = "line.position <= @UpTo AND (line.ended IS NULL OR line.ended > @UpTo)";
            if (Design is not null)
                condition += " AND line.design = @Design";
            if (Designs is not null) // an index would not serve a column with a sign
                condition += $" AND +line.design BETWEEN {Designs.Min()} AND {Designs.Max()} AND +line.design IN ({string.Join(',', Designs)})";
            if (Place is not null)
                condition += " AND line.place = @Place";
            if (Sources is not null)
                condition += $" AND line.source IN ({string.Join(',', Sources)})";
            return condition + (From is null ? "" : " AND line.day >= @From") + (To is null ? "" : " AND line.day <= @To");
        }
    }
}
