using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>A run of one design, made for the order. Made to order is sold, so no share of it stays unsold.</summary>
public sealed record QuoteLine
{
    /// <summary>What the client reads.</summary>
    /// <example>Twist stem goblet, tall</example>
    [MaxLength(Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>Whole good pieces, 1 to 10,000.</summary>
    /// <example>30</example>
    [Pieces(Minimum = "1", Maximum = "10000")]
    public required decimal Quantity { get; init; }

    /// <summary>The key of a stored design of the quote's profile, or a design of its own.</summary>
    public required KeyOr<Design> Design { get; init; }

    /// <summary>How the work gets quicker from piece to piece; {} takes it from the log of the design. Absent: it does not.</summary>
    public Learning? Learning { get; init; }

    /// <summary>Whether the log of its stored design is to say how the work gets quicker.</summary>
    public bool IsLeftToTheLog() => this is { Learning.Rate: null, Learning: not null, Design.Key: not null };

    /// <summary>Pieces that are made to try the design and are not delivered.</summary>
    /// <example>2</example>
    [Pieces(Maximum = "10000")]
    public decimal TrialPieces { get; init; }

    /// <summary>Times that the bench is set up for it: more than 1 only where one run cannot hold all pieces.</summary>
    /// <example>1</example>
    [Pieces(Minimum = "1")]
    public decimal Runs { get; init; } = 1;

    /// <summary>
    /// How sure it must be that enough pieces come out good, 0.5 to 0.999: so many are started and priced. Absent: as many as are expected to be
    /// needed.
    /// </summary>
    /// <example>0.9</example>
    [Share(Minimum = "0.5", Maximum = "0.999")]
    public decimal? Sure { get; init; }
}
