namespace PriceFloor.Storage;

/// <summary>The numbers under which the log knows names.</summary>
internal sealed class LogNames
{
    public const string Source = "source", Design = "design", Channel = "channel", Currency = "currency", Stall = "stall", Step = "step",
        Piece = "piece";

    private const int Together = 1000;

    private readonly Dictionary<(string Kind, string Key), long> _ids = [];

    /// <summary>The number of a name that was looked up; null for none.</summary>
    public long? this[string kind, string? key] => key is null ? null : _ids[(kind, key)];

    /// <summary>Whether a name has a number.</summary>
    public bool Has(string kind, string key) => _ids.ContainsKey((kind, key));

    /// <summary>The names of lines and of their source.</summary>
    public static HashSet<(string Kind, string Key)> In<T>(LogAppend<T> append) where T : LogLine
    {
        var names = new HashSet<(string, string)> { (Source, append.Source) };
        foreach (var line in append.Lines)
        {
            Add(Design, line.Design);
            Add(Step, line.LastStep);
            if (line is BenchLine entry)
                Add(Step, entry.Step);
            if (line is not MovementLine movement)
                continue;
            Add(Channel, movement.Place);
            Add(Currency, movement.Currency);
            Add(Stall, movement.Stall);
            Add(Piece, movement.Piece);
        }

        return names;

        void Add(string kind, string? key)
        {
            if (key is not null)
                names.Add((kind, key));
        }
    }

    /// <summary>Looks up names; those that are new have no number yet.</summary>
    public async ValueTask Find(Session session, IEnumerable<(string Kind, string Key)> names)
    {
        foreach (var kind in names.GroupBy(name => name.Kind, name => name.Key))
            foreach (var keys in kind.Chunk(Together))
                foreach (var (id, key) in await session.Query<(long, string)>("SELECT id, key FROM name WHERE kind = @kind AND key IN @keys",
                        new { kind = kind.Key, keys }))
                    _ids[(kind.Key, key)] = id;
    }

    /// <summary>Gives new names their numbers.</summary>
    public static async ValueTask Add(Session session, IEnumerable<(string Kind, string Key)> names) => await session.Execute(
        "INSERT INTO name (kind, key) VALUES (@Kind, @Key) ON CONFLICT DO NOTHING",
        names.Select(name => new { name.Kind, name.Key }).ToList());
}
