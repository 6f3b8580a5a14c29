using System.Diagnostics;
using System.Globalization;

namespace PriceFloor.ParserFuzzing;

/// <summary>Changes inputs at random and keeps those that take the parser where none took it before; from them it goes on.</summary>
internal sealed class CorpusLoop(FuzzedParser parser, int seed)
{
    private const int Longest = 4096;

    private readonly Random _random = new(seed);
    private readonly List<byte[]> _corpus = [];

    /// <summary>False where an input broke the parser; it is then in artifacts/fuzz-parsers.</summary>
    public async Task<bool> Run(TimeSpan time)
    {
        BranchCounts.Forget();
        foreach (var input in parser.Seeds)
            if (!await IsSound(input))
                return false;
        if (_corpus.Count == 0)
            throw new InvalidOperationException("No branch is counted: run this by tests/fuzz-parsers.sh, which has them counted.");
        var (atFirst, count, watch) = (BranchCounts.Seen, 0L, Stopwatch.StartNew());
        for (; watch.Elapsed < time; count++)
            if (!await IsSound(Changed()))
                return false;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{parser.Name}: {count} inputs, {atFirst} branches at first, {BranchCounts.Seen} at last, {_corpus.Count} inputs kept"));
        return true;
    }

    private async Task<bool> IsSound(byte[] input)
    {
        try
        {
            BranchCounts.Begin();
            await parser.Read(input);
            if (BranchCounts.IsNew())
                _corpus.Add(input);
            await parser.Check(input, _random);
            return true;
        }
        catch (Exception fault)
        {
            var path = Path.Combine(Directory.CreateDirectory("artifacts/fuzz-parsers").FullName, $"{parser.Name}.bin");
            await File.WriteAllBytesAsync(path, input);
            Console.WriteLine($"{parser.Name}: {fault}\n{path}: {Convert.ToBase64String(input)}");
            return false;
        }
    }

    private byte[] Changed()
    {
        var input = Any(_corpus).ToList();
        for (var times = 1 << _random.Next(4); times > 0; times--)
            Change(input);
        return [.. input.Take(Longest)];
    }

    private void Change(List<byte> input)
    {
        var at = _random.Next(input.Count + 1);
        var length = Math.Min(_random.Next(1, 40), input.Count - at);
        switch (_random.Next(7))
        {
            case 0 when at < input.Count:
                input[at] ^= (byte)(1 << _random.Next(8));
                break;
            case 1 when at < input.Count:
                input[at] = (byte)_random.Next(256);
                break;
            case 2:
                input.RemoveRange(at, length);
                break;
            case 3:
                input.InsertRange(_random.Next(input.Count + 1), input.GetRange(at, length));
                break;
            case 4:
                var other = Any(_corpus);
                input.InsertRange(at, other.Skip(_random.Next(other.Length + 1)).Take(_random.Next(1, 80)));
                break;
            default:
                input.InsertRange(at, Any(parser.Words));
                break;
        }
    }

    private T Any<T>(IReadOnlyList<T> list) => list[_random.Next(list.Count)];
}
