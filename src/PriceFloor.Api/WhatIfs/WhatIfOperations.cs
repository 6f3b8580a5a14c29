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
        + "old verdict back. A scenario is a list of changes to the profile, its plan, its designs, their listed prices and the channels. Its answer "
        + "is that of storing the changed documents in a copy; nothing is stored. With a plan: whether the year closes and where its cash is lowest, "
        + "what alone would close it, and for a price review what holding prices costs, by which day a rise is announced, and its phases. "
        + "As image/svg+xml a picture of the floors. Scope: read.")
    {
        Answer = typeof(WhatIfAnswer),
        Cases = WhatIfCases.WhatIfs,
        OtherAnswers = [FormatExample.Drawing],
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CannotCompute],
    };

    public static void MapWhatIfs(this RouteGroupBuilder v1)
    {
        v1.MapPost("/what-ifs", WhatIfRoutes.Post).Needs(Scope.Read).Offer(Format.Json, Format.Svg).Tell(WhatIfs);
        v1.MapPost("/what-ifs.svg", WhatIfRoutes.Post).Needs(Scope.Read).Always(Format.Svg)
            .Tell(WhatIfs.AsDrawing(s_files["computeWhatIfsSvg.request.json"]));
    }
}
