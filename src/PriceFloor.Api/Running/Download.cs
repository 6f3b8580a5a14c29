namespace PriceFloor.Api.Running;

/// <summary>Whether this is the program in one file that is downloaded (.ci/downloads builds it so), and not one that dotnet starts.</summary>
public static class Download
{
    /// <summary>Set in the runtime's settings of that program alone.</summary>
    public static bool IsThis => AppContext.TryGetSwitch("PriceFloor.IsDownload", out var isOne) && isOne;
}
