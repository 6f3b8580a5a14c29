using PriceFloor.Api.Http;
using PriceFloor.Api.Http.OpenApi;
using PriceFloor.Api.Running;
using Serilog;

try
{
    var verb = Verbs.Of(args);
    if (verb == Verbs.HealthCheck)
        return await HealthCheck.RunAsync();
    if (StoreVerbs.Words.ContainsKey(verb))
        return StoreVerbs.Run(verb, args, new ConfigurationBuilder().AddEnvironmentVariables().Build(), Console.Out);

    HeadStart.Begin();
    var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { Args = Verbs.HostArguments(args), ContentRootPath = AppContext.BaseDirectory });
    builder.UseAddresses();
    builder.UseSettings(demo: args.Contains("--demo"));
    builder.UseServerLimits();
    builder.UseRequestLog();
    builder.UseStore();
    builder.UseDocuments();
    builder.UseOpenApi();

    var app = builder.Build();
    if (verb != Verbs.OpenApi)
        _ = app.Services.GetRequiredService<FirstStart>().Begin();
    app.UseRequestPipeline();
    app.UseOpenApiPages();
    app.MapRoutes();

    if (verb == Verbs.OpenApi)
        return await app.WriteOpenApiAsync(Console.Out);
    var opening = app.Services.GetRequiredService<Opening>();
    await opening.ServeAsync(app);
    return 0;
}
catch (Exception e) when (Starting.IsOperatorsFault(e))
{
    await Console.Error.WriteLineAsync(e.Message);
    return 1;
}
finally
{
    await Log.CloseAndFlushAsync();
}
