namespace PriceFloor.Storage;

/// <summary>
/// Results without awaiting: for the verbs that work on a file, whose engine has always answered when its call returns, and for the start, which has
/// nothing else to do. Blocks a thread if the engine has not answered yet.
/// </summary>
internal static class AtOnceExtensions
{
    public static T AtOnce<T>(this ValueTask<T> answer) =>
        answer.IsCompleted ? answer.GetAwaiter().GetResult() : answer.AsTask().GetAwaiter().GetResult();

    public static void AtOnce(this ValueTask work)
    {
        if (work.IsCompleted)
            work.GetAwaiter().GetResult();
        else
            work.AsTask().GetAwaiter().GetResult();
    }
}
