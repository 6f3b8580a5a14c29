using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.PriceLists;

/// <summary>A channel or profile that a list is asked for and that does not exist.</summary>
internal static class UnknownNames
{
    public static List<InputError> Of(Catalogue catalogue, string? channel, string? profile, bool mayRead)
    {
        var unknown = new List<InputError>();
        if (channel is not null && catalogue.Channel(channel) is null)
            unknown.Add(new InputError
            {
                Parameter = "channel",
                Code = InputCodes.UnknownChannel,
                Detail = $"There is no channel \"{channel}\"{(mayRead ? catalogue.HintOfChannel(channel) : "")}; case counts.",
            });
        if (profile is not null && catalogue.Profile(profile) is null)
            unknown.Add(new InputError
            {
                Parameter = "profile",
                Code = InputCodes.UnknownProfile,
                Detail = $"There is no profile \"{profile}\"; case counts.",
            });
        return unknown;
    }
}
