using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.WhatIfs;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class WhatIfOperations
{
    private static readonly ExampleFolder s_files = new(typeof(WhatIfOperations));

    private static readonly Operation WhatIfs = new("computeWhatIfs", "Scenarios", "What if numbers were other than stored?",
        "Scenarios side by side: the year in each, the prices that move, and the listed prices whose verdict falls, with the price that gives the "
        + "old verdict back. A scenario is a list of changes to the profile, its designs, their listed prices and the channels. Its answer is that "
        + "of storing the changed documents in a copy; nothing is stored. Scope: read.")
    {
        Answer = typeof(WhatIfAnswer),
        RequestExample = s_files["computeWhatIfs.request.json"],
        AnswerExample = s_files["computeWhatIfs.answer.json"],
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CannotCompute],
    };

    public static void MapWhatIfs(this RouteGroupBuilder v1) => v1.MapPost("/what-ifs", WhatIfRoutes.Post).Needs(Scope.Read).Tell(WhatIfs);
}
