using PriceFloor.Api.HealthChecks;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Running;

/// <summary>The descriptions of these addresses. They are here because the OpenAPI writer uses their folders.</summary>
public static class HealthOperations
{
    private static readonly ExampleFolder s_files = new(typeof(HealthOperations));

    public static readonly Operation Live = new("getLive", "Health", "Is the process there?", "Needs no key.")
    { Answer = typeof(HealthAnswer), AnswerExample = s_files["getLive.answer.json"] };

    public static readonly Operation Ready = new("getReady", "Health", "Can it answer?", "The store can be read. Needs no key.")
    { Answer = typeof(HealthAnswer), AnswerExample = s_files["getReady.answer.json"] };
}
