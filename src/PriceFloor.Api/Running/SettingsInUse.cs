using PriceFloor.Api.Configuration;
using Serilog;

namespace PriceFloor.Api.Running;

/// <summary>Logs the settings in use at start, without secrets, and warns of unknown names.</summary>
public static class SettingsInUse
{
    public static void Tell(IConfiguration configuration, Settings settings)
    {
        Log.Information("The data folder is {Folder}", Path.GetFullPath(settings.DataFolder));
        foreach (var name in Settings.Names.Keys.Where(name => !string.IsNullOrEmpty(configuration[name])))
            Log.Information("{Name:l} = {Value:l}", name, Secrets.Is(name) ? "(set, not shown)" : configuration[name]);
        foreach (var (name, _) in configuration.AsEnumerable())
            if (name.StartsWith("PRICEFLOOR_", StringComparison.OrdinalIgnoreCase) && !Settings.Names.ContainsKey(name))
                Log.Warning("{Name} is not a setting of PriceFloor; the known ones are {Names}", name, string.Join(", ", Settings.Names.Keys));
    }
}
