using PriceFloor.Api.Configuration;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.FirstContact;

public static class VersionRoutes
{
    public static JsonAnswer<VersionAnswer> Get(Settings settings, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        return JsonAnswer.Of(VersionAnswer.On(settings.Store));
    }
}
