using PriceFloor.Api.Configuration;
using PriceFloor.Api.HealthChecks;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.Running;
using Serilog;

try
{
    var line = CommandLine.Of(args, Download.IsThis);
    var verb = line.Verb;
    if (verb is Commands.Help or Commands.Version)
        return Commands.Tell(verb, line.Words, Console.Out);
    if (verb == Commands.HealthCheck)
        return await HealthCheck.RunAsync();
    if (StoreCommands.All.Contains(verb))
        return StoreCommands.Run(verb, line.Words, line.Configuration, Console.Out, line.Options);
    if (QuestionCommands.All.Contains(verb))
        return await QuestionCommands.Run(line, Console.OpenStandardOutput());

    if (verb == Commands.Serve)
        QuickStart.Preload();
    var builder =
        WebApplication.CreateSlimBuilder(new WebApplicationOptions { Args = line.HostArguments, ContentRootPath = AppContext.BaseDirectory });
    if (verb == Commands.OpenApiFiles)
        builder.IgnoreSettings(); // they are for every server, not for the one with these settings
    builder.UseAddresses();
    builder.UseSettings(line.Demo);
    builder.UseServerLimits();
    builder.UseRequestLog();
    builder.UseStore();
    builder.UseWarmUp();
    builder.UseDocuments();
    builder.UseOpenApi();

    var app = builder.Build();
    if (verb == Commands.Serve)
        QuickStart.OpenStore(app);
    app.UseRequestPipeline();
    app.UseOpenApiPages();
    app.MapRoutes();

    if (verb == Commands.OpenApi)
        return await app.WriteOpenApiAsync(Console.Out);
    if (verb == Commands.OpenApiFiles)
        return await app.BakeOpenApiAsync(line.Words[0], Console.Out);
    var opening = app.Services.GetRequiredService<StoreReadiness>();
    await opening.ServeAsync(app);
    return 0;
}
catch (Exception e) when (Starting.IsOperatorsFault(e))
{
    await Console.Error.WriteLineAsync(e.Message);
    return Commands.FaultCode(args);
}
finally
{
    await Log.CloseAndFlushAsync();
}
