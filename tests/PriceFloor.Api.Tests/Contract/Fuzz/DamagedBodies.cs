using System.Text;
using PriceFloor.Api.Tests.Http.Reading;
using PriceFloor.Api.Tests.Workbooks;

namespace PriceFloor.Api.Tests.Contract.Fuzz;

/// <summary>
/// Bodies for every address that reads one, in every format: invalid text (bytes that are not UTF-8, half a surrogate pair, control characters),
/// changed bytes, and random bytes. The same seed makes the same bodies.
/// </summary>
internal static class DamagedBodies
{
    /// <summary>Replacements for text in a body; the last ones are bytes of Windows-1252, Latin-1 and UTF-16.</summary>
    private static readonly byte[][] s_odd =
    [
        .. new[] { "\\ud800", "\\udfff", "\\ud83d\\u0041", "\\ud83d", "\\u0000", "\\u0007", "\\", "\\u12", "\u0000", "\u0001", "\u007f", "\uFEFF",
            "\uFFFF", "\u202e", "\"", "'", "\r", "\n", ",", "<", "&#xD800;", "&#0;", "]]>", "=", "%00" }.Select(Encoding.UTF8.GetBytes),
        [0x92], [0x80], [0xE9], [0xFF], [0xFE, 0xFF], [0xC0, 0x80], [0xC3, 0x28], [0xED, 0xA0, 0x80], [0xED, 0xBF, 0xBF], [0xF4, 0x90, 0x80, 0x80],
        [0xF0, 0x9F], [0x00, 0x41],
    ];

    /// <summary>Each good body sixty times, with odd bytes in it: each kind once, then several at once.</summary>
    public static IEnumerable<FuzzedRequest> WithOddBytes(Random random) =>
        (from body in GoodBodies.All
         from i in Enumerable.Range(0, 60)
         select Sent(body.Method, body.Path, body.Type, Damaged(Utf8(body.Good), random, first: i < s_odd.Length ? i : null), "odd bytes"))
        .Concat(
            from i in Enumerable.Range(0, 60)
            select Sent("POST", Book.Path, Book.Type, Damaged(Book.Example, random, first: i < s_odd.Length ? i : null), "odd bytes"));

    /// <summary>The same of bodies for the host of many studios.</summary>
    /// <param name="export">A studio, as it is exported.</param>
    /// <param name="random">Where they are damaged, and how.</param>
    public static IEnumerable<FuzzedRequest> OfHosts(string export, Random random) =>
        from body in GoodBodies.OfHosts.Select(body => (body.Method, body.Path, Type: "application/json", body.Good))
            .Append((Method: "POST", Path: "/v1/studios/harbour/import", Type: "application/x-ndjson", Good: export))
        from i in Enumerable.Range(0, 60)
        select Sent(body.Method, body.Path, body.Type, Damaged(Utf8(body.Good), random, first: i < s_odd.Length ? i : null), "odd bytes");

    /// <summary>Each address in each format, also in those that it does not read.</summary>
    public static IEnumerable<FuzzedRequest> AtRandom(Random random) =>
        from address in GoodBodies.All.Select(body => (body.Method, body.Path)).Distinct()
        from type in GoodBodies.All.Select(body => body.Type).Distinct()
        from i in Enumerable.Range(0, 4)
        select Sent(address.Method, address.Path, type, AnyBytes(random), "bytes at random");

    /// <summary>A large document with one to three changed bytes, to a byte of JSON or to any.</summary>
    public static IEnumerable<FuzzedRequest> OfProfiles(Random random) => Enumerable.Range(0, 400).Select(_ =>
    {
        var damaged = Encoding.UTF8.GetBytes(Sample.Rich);
        for (var hit = 0; hit <= random.Next(3); hit++)
            damaged[random.Next(damaged.Length)] = random.Next(3) == 0 ? (byte)random.Next(256) : "0123456789eE-+.,:{}[]\"\\ntf"u8[random.Next(26)];
        return Sent("PUT", "/v1/profiles/main", "application/json", damaged, "bytes changed");
    });

    /// <summary>A what-if of three large documents in which one byte was changed.</summary>
    public static IEnumerable<FuzzedRequest> OfWhatIfs(Random random) => Enumerable.Range(0, 100).Select(_ =>
    {
        var damaged = Encoding.UTF8.GetBytes($$"""{"profile":{{Sample.Rich}},"design":{{Sample.RichDesign}},"channels":[{{Sample.RichChannel}}]}""");
        damaged[random.Next(damaged.Length)] = "0123456789eE-+.,:{}[]\"\\ntf\0\t"u8[random.Next(28)];
        return Sent("POST", "/v1/floor-prices?workings=true", "application/json", damaged, "a byte changed");
    });

    private static byte[] Utf8(string text) => Encoding.UTF8.GetBytes(text);

    private static FuzzedRequest Sent(string method, string path, string type, byte[] body, string how) =>
        new(path, method) { ContentType = type, Body = body, Spoilt = { how } };

    private static byte[] AnyBytes(Random random)
    {
        var body = new byte[random.Next(1, 400)];
        random.NextBytes(body);
        return body;
    }

    /// <summary>Odd bytes inserted, bytes replaced by odd ones, or bytes removed, in up to three places.</summary>
    private static byte[] Damaged(byte[] good, Random random, int? first)
    {
        var body = good.ToList();
        for (var times = first is null ? random.Next(1, 4) : 1; times > 0; times--)
        {
            var odd = s_odd[first ?? random.Next(s_odd.Length)];
            // Mostly in text: after a letter.
            var places = Enumerable.Range(1, body.Count - 1).Where(at => char.IsAsciiLetter((char)body[at - 1])).ToList();
            var at = random.Next(4) == 0 || places.Count == 0 ? random.Next(body.Count) : places[random.Next(places.Count)];
            if (random.Next(3) == 0)
                body.RemoveRange(at, Math.Min(random.Next(1, 4), body.Count - at));
            body.InsertRange(Math.Min(at, body.Count), odd);
        }

        return [.. body];
    }
}
