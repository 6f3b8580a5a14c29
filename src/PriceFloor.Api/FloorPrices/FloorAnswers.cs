using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.FloorPrices;

/// <summary>A design's floor as an answer.</summary>
public static class FloorAnswers
{
    /// <summary>The answer on every stored channel. A damaged one is left out and named in a warning.</summary>
    public static FloorPriceAnswer AnswerOnAll(this DesignFloor floor, Catalogue catalogue, bool workings)
    {
        List<Stored<Channel>> channels = [.. catalogue.Channels.Where(channel => channel.Sound is not null)];
        var answer = floor.Answer(channels, catalogue.Today, workings, channels.Select(channel => channel.Document));
        var listings = Listings.Of(floor, channels);
        return answer with
        {
            OneRetailPrice = listings.OneRetailPrice,
            Warnings = [.. answer.Warnings, .. WarningAnswer.Of(listings.Warnings),
                .. WarningAnswer.Of(DamagedDocumentException.WarningsOf(catalogue.Channels, "/basis/channels"))],
        };
    }

    /// <summary>The answer on these channels, of which some may have been sent.</summary>
    public static FloorPriceAnswer AnswerOn(this DesignFloor floor, Catalogue catalogue, IReadOnlyList<Stored<Channel>> channels, bool workings) =>
        floor.Answer(channels, catalogue.Today, workings, channels.Select(channel => channel.Document).Concat(catalogue.SoundChannels));

    /// <summary>The documents that a floor rests on.</summary>
    public static BasisAnswer Basis(this DesignFloor floor) =>
        new() { Profile = floor.Profile.Basis, Design = floor.Design.Basis, ListedPrice = floor.WholesalePrice?.Basis };

    /// <summary>Why there is no floor, in terms of the request that asked for it.</summary>
    /// <param name="faults">Why there is none.</param>
    /// <param name="profile">The profile in question.</param>
    /// <param name="design">The design.</param>
    /// <param name="place">Where the request names the profile.</param>
    public static List<Fault> FaultsOf(IReadOnlyList<Fault> faults, Stored<CostProfile> profile, Stored<Design> design, Place place) =>
        MaterialsLacking(profile, design, place) is { Count: > 0 } lacking ? lacking : [.. faults];

    /// <summary>A stored design is not part of the request, so a material that it lacks is reported where the request names the profile.</summary>
    private static List<Fault> MaterialsLacking(Stored<CostProfile> profile, Stored<Design> design, Place place)
    {
        var known = profile.Document.Materials.Select(line => line.Material).ToHashSet();
        var used = design.Revision is null ? [] : design.Document.Materials.Select(line => line.Material).OfType<string>();
        var priceList = profile.Revision is null ? "the inline profile" : $"the profile \"{profile.Key}\"";
        return [.. used.Where(material => !known.Contains(material)).Distinct()
            .Select(material => RequestFault.Unknown(place.Error("profile", FaultCodes.UnknownMaterial,
                $"The price list of {priceList} has no material \"{material}\", which the design \"{design.Key}\" uses; add it there, "
                + "or try another profile.")))];
    }

    private static ChannelPriceAnswer Row(this DesignFloor floor, Stored<Channel> channel)
    {
        var money = Currency.Of(channel.Document.Currency);
        var prices = floor.On(channel);
        var onChannel = new ChannelFloor(floor.Floor.UnitCost, channel.Document);
        var listed = floor.ListedOn(channel);
        return new ChannelPriceAnswer
        {
            Channel = channel.Key,
            Currency = money.Code,
            Floor = money.Code == floor.Year.Currency.Code ? money.RoundUp(onChannel.Floor) : null,
            SellingHours = Answers.Hours(onChannel.SellingHours),
            FloorPrice = Price(prices.Found?.FloorPrice, money),
            TargetPrice = Price(prices.Found?.TargetPrice, money),
            ListedPrice = Price(listed, money),
            Verdict = listed is { } price ? prices.Found?.VerdictOf(price) : null,
            Reason = prices.Found is null ? prices.Faults[0].Code : null,
        };
    }

    private static IEnumerable<Working> WorkingsOn(this DesignFloor floor, Stored<Channel> channel, int number) =>
        floor.On(channel).Found is { } prices ? Workings.Prefixed($"channel{number}", $"on channel {number}: ", Workings.Of(prices)) : [];

    private static decimal? Price(decimal? price, Currency money) => price is { } exact ? Rounding.WithDecimals(exact, money.Decimals) : null;

    /// <summary>The answer on some channels; what others charge is recovered there.</summary>
    private static FloorPriceAnswer Answer(this DesignFloor found, IReadOnlyList<Stored<Channel>> channels, DateOnly today, bool workings,
        IEnumerable<Channel> all)
    {
        var (floor, cost, money) = (found.Floor, found.Floor.UnitCost, found.Year.Currency);
        return new FloorPriceAnswer
        {
            Currency = money.Code,
            Floor = money.RoundUp(cost.Floor),
            Wholesale = floor.Wholesale,
            Retail = floor.Retail,
            BenchHours = Answers.Hours(cost.BenchHours),
            BenchCost = money.Round(cost.BenchCost),
            Materials = money.Round(cost.Materials),
            SecondsCredit = money.Round(cost.SecondsCredit),
            StartsPerGoodPiece = Answers.Ratio(cost.Time.Starts),
            PiecesPerYear = Rounding.Down(cost.PiecesPerYear, 0),
            FloorWithinLimit = cost.YearlyPieces.FloorWithinLimit is { } within ? money.RoundUp(within) : null,
            Channels = [.. channels.Select(found.Row)],
            Basis = found.Basis() with { Channels = [.. channels.Select(channel => channel.Basis)] },
            Assumed = AssumptionAnswer.Of(
                found.Assumptions.Concat(channels.Index().SelectMany(channel => Assumed.In(channel.Item.Document, $"/channels/{channel.Index}")))),
            Warnings = WarningAnswer.Of(found.WarningsOfTheFloor(today).Concat(channels.Index().SelectMany(channel =>
                Warnings.In(channel.Item.Document, found.Year, $"/channels/{channel.Index}", all))).Distinct()),
            Workings = WorkingAnswer.Of(workings,
                () => found.WorkingsOfTheFloor.Concat(channels.Index().SelectMany(channel => found.WorkingsOn(channel.Item, channel.Index + 1)))),
        };
    }
}
