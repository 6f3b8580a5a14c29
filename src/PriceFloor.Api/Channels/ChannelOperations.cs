using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.Patches;

namespace PriceFloor.Api.Channels;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class ChannelOperations
{
    private static readonly ExampleFolder s_files = new(typeof(ChannelOperations));

    private static readonly Noun s_noun = new("channel", "channels", "Channel", "Channels", typeof(Channel),
        s_files["channel.retail.request.json"], s_files["channel.retail.answer.json"])
    {
        Cases = ChannelCases.Channels,
    };

    public static void MapChannels(this RouteGroupBuilder v1)
    {
        v1.MapGet("/channels", DocumentRoutes.List<Channel>).Needs(Scope.Read).Tell(DocumentOperations.List(s_noun));
        v1.MapGet("/channels/{key}", DocumentRoutes.Get<Channel>).Needs(Scope.Read).Tell(DocumentOperations.Get(s_noun));
        v1.MapPut("/channels/{key}", DocumentRoutes.Put<Channel>).Needs(Scope.Write).Tell(DocumentOperations.Put(s_noun));
        v1.MapPatch("/channels/{key}", PatchRoutes.Patch<Channel>).Needs(Scope.Write)
            .Tell(PatchOperations.Patch(s_noun, s_files["patchChannel.request.json"], s_files["patchChannel.answer.json"]));
        v1.MapDelete("/channels/{key}", DocumentRoutes.Delete<Channel>).Needs(Scope.Write).Tell(DocumentOperations.Delete(s_noun));
        v1.MapGet("/channels/{key}/revisions", DocumentRoutes.Revisions<Channel>).Needs(Scope.Read).Tell(DocumentOperations.Revisions(s_noun));
        v1.MapGet("/channels/{key}/revisions/{number}", DocumentRoutes.Revision<Channel>).Needs(Scope.Read).Tell(DocumentOperations.Revision(s_noun));
    }
}
