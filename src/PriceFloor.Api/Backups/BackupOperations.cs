using PriceFloor.Api.Access;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Backups;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class BackupOperations
{
    private static readonly ExampleFolder s_files = new(typeof(BackupOperations));

    private static readonly Operation MakeBackup = new("createBackup", "Backups", "Make a backup",
        "Copies the whole store, as it is at one moment, into backups in the data folder, while writes go on. "
        + "The file gets its name only after it was checked. Scope: admin.")
    {
        Answer = typeof(BackupAnswer),
        Good = new Dictionary<int, string> { [201] = "The backup is on the disk." },
        AnswerExample = s_files["createBackup.answer.json"],
    };

    public static void MapBackups(this RouteGroupBuilder v1)
    {
        v1.MapPost("/backups", BackupRoutes.Post).Needs(Scope.Admin).Tell(MakeBackup);
    }
}
