namespace PriceFloor.Storage;

/// <summary>Which lines of a list of the log to read. What is null does not matter.</summary>
public sealed record LogQuestion
{
    /// <summary>Lines as they stood at this position: <see cref="LogPosition"/>.</summary>
    public required long UpTo { get; init; }

    /// <summary>Only lines after this position.</summary>
    public long After { get; init; }

    public int Limit { get; init; } = int.MaxValue;

    public string? Source { get; init; }

    public string? Design { get; init; }

    /// <summary>Key of the channel; bench entries have none.</summary>
    public string? Place { get; init; }

    /// <summary>First day, as days since 0001-01-01.</summary>
    public int? From { get; init; }

    /// <summary>Last day.</summary>
    public int? To { get; init; }

    /// <summary>The designs that the caller may see; null: all. Lines without a design are for those who may see all.</summary>
    public IReadOnlyCollection<string>? Designs { get; init; }

    internal static string Joined => "JOIN name AS source ON source.id = line.source LEFT JOIN name AS design ON design.id = line.design";

    internal string Condition
    {
        get
        {
            var condition = "line.position > @After AND line.position <= @UpTo AND (line.ended IS NULL OR line.ended > @UpTo)";
            if (Source is not null)
                condition += " AND line.source = (SELECT id FROM name WHERE kind = 'source' AND key = @Source)";
            if (Design is not null)
                condition += " AND line.design = (SELECT id FROM name WHERE kind = 'design' AND key = @Design)";
            if (Place is not null)
                condition += " AND line.place = (SELECT id FROM name WHERE kind = 'channel' AND key = @Place)";
            if (Designs is not null)
                condition += " AND line.design IN (SELECT id FROM name WHERE kind = 'design' AND key IN @Designs)";
            return condition + (From is null ? "" : " AND line.day >= @From") + (To is null ? "" : " AND line.day <= @To");
        }
    }
}
