using SharpFuzz.Common;

namespace PriceFloor.ParserFuzzing;

/// <summary>
/// How often each branch of the parsers was taken. The parsers' assemblies are rewritten to count into this memory; counts that differ by
/// little are one (1, 2, 3, 4 to 7, 8 to 15 and so on), so that a longer loop is news and a slightly longer one is not.
/// </summary>
internal static unsafe class BranchCounts
{
    private const int Size = 65536;

    private static readonly byte[] s_counts = GC.AllocateArray<byte>(Size, pinned: true);
    private static readonly byte[] s_seen = new byte[Size];

    static BranchCounts() => Trace.SharedMem = (byte*)System.Runtime.InteropServices.Marshal.UnsafeAddrOfPinnedArrayElement(s_counts, 0);

    /// <summary>Branches, and pairs of one after another, that were ever taken for this parser.</summary>
    public static int Seen => s_seen.Count(one => one != 0);

    public static void Forget() => Array.Clear(s_seen);

    public static void Begin()
    {
        Array.Clear(s_counts);
        Trace.PrevLocation = 0;
    }

    /// <summary>Whether the run since <see cref="Begin"/> went where none went before; then it is remembered.</summary>
    public static bool IsNew()
    {
        var isNew = false;
        for (var i = 0; i < Size; i++)
            if (s_counts[i] != 0 && (Bucket(s_counts[i]) & ~s_seen[i]) is var news && news != 0)
                (s_seen[i], isNew) = ((byte)(s_seen[i] | news), true);
        return isNew;
    }

    private static int Bucket(byte count) => count switch { 1 => 1, 2 => 2, 3 => 4, < 8 => 8, < 16 => 16, < 32 => 32, < 128 => 64, _ => 128 };
}
