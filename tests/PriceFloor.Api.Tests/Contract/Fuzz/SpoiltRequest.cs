using System.Text;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Tests.Contract.Fuzz;

/// <summary>One thing wrong with a request: in its address, its headers or its body.</summary>
internal sealed class SpoiltRequest(OddValues odd, Random random)
{
    private readonly SpoiltBody _body = new(odd, random);

    public void Spoil(FuzzedRequest request)
    {
        List<Action<FuzzedRequest>> ways = [Unknown, Accept, Condition, Authorization, Headers, Query];
        if (request.Keys.Count > 0)
            ways.AddRange([PathKey, PathKey]);
        if (request.Query.Count > 0)
            ways.AddRange([Doubled, QueryValue, QueryValue]);
        if (request.Body is not null)
            ways.AddRange([MediaType, Bytes, Bytes, Bytes]);
        if (request.ContentType == "application/json")
            ways.AddRange([Json, Json, Json, Json, Json, Json, Json, Json, Json, Json]);
        odd.Any(ways)(request);
    }

    /// <summary>So wrong that nobody would send it by mistake.</summary>
    public void Ruin(FuzzedRequest request)
    {
        for (var times = random.Next(2, 5); times > 0; times--)
            Spoil(request);
        switch (random.Next(8))
        {
            case 0:
                request.Body = new byte[random.Next(1, 3000)];
                random.NextBytes(request.Body);
                Done(request, "random bytes");
                break;
            case 1:
                request.Body = Encoding.UTF8.GetBytes(odd.Json);
                Done(request, "an odd body");
                break;
            case 2:
                request.Body = [.. Enumerable.Repeat((byte)odd.Any([' ', '[', '{', '"', ',', '\n', '0', '<']), odd.Any([1000, 70_000, 300_000]))];
                Done(request, "one byte over and over");
                break;
            case 3:
                request.Query.Add((odd.Any(["asOf", "limit", "after", "workings", "price", "%00", ""]),
                    new string(odd.Any(['9', 'a', '%']), odd.Any([100, 4000]))));
                Done(request, "a huge parameter");
                break;
        }

        if (request.Body is not null)
            request.ContentType ??= "application/json";
    }

    private void Json(FuzzedRequest request)
    {
        try
        {
            var (json, done) = _body.Json(Encoding.UTF8.GetString(request.Body!));
            request.Body = Encoding.UTF8.GetBytes(json);
            Done(request, done);
        }
        catch (Exception already) when (already is System.Text.Json.JsonException or InvalidOperationException or ArgumentException)
        {
            Bytes(request); // it was damaged before and is no longer a tree
        }
    }

    private void Bytes(FuzzedRequest request)
    {
        (request.Body, var done) = _body.Bytes(request.Body!);
        if (request.Body.Length > 300_000)
            request.Body = request.Body[..300_000];
        Done(request, done);
    }

    private void MediaType(FuzzedRequest request) => Done(request, $"Content-Type {request.ContentType = odd.MediaType}");

    private void PathKey(FuzzedRequest request)
    {
        var name = odd.Any([.. request.Keys.Keys]);
        Done(request, $"{name} {request.Keys[name] = odd.Key}");
    }

    private void Query(FuzzedRequest request)
    {
        var names = request.Operation["parameters"]?.AsArray().Where(one => one!["in"]!.GetValue<string>() == "query")
            .Select(one => one!["name"]!.GetValue<string>()).ToList() ?? [];
        request.Query.Add((names.Count > 0 ? odd.Any(names) : "asOf", odd.Text));
        Done(request, "an odd parameter");
    }

    private void QueryValue(FuzzedRequest request)
    {
        var at = random.Next(request.Query.Count);
        request.Query[at] = random.Next(6) == 0
            ? (request.Query[at].Name.ToUpperInvariant(), request.Query[at].Value)
            : (request.Query[at].Name, odd.Text);
        Done(request, $"parameter {request.Query[at]}");
    }

    private void Doubled(FuzzedRequest request)
    {
        request.Query.Add(odd.Any(request.Query));
        Done(request, "a parameter twice");
    }

    private void Unknown(FuzzedRequest request)
    {
        request.Query.Add((odd.Any(["x", "asof", "%61sOf", "", "a[]", "limit%20", "access_token"]), odd.Text));
        Done(request, "an unknown parameter");
    }

    private void Accept(FuzzedRequest request)
    {
        request.Headers.RemoveAll(header => header.Name == "Accept");
        request.Headers.Add(("Accept", odd.Accept));
        Done(request, "an odd Accept");
    }

    private void Condition(FuzzedRequest request)
    {
        request.Headers.Add((odd.Any(["If-Match", "If-None-Match"]), odd.Tag));
        Done(request, "an odd condition");
    }

    private void Authorization(FuzzedRequest request)
    {
        request.Headers.Add(("Authorization", odd.Any(["", "Bearer", "Bearer ", "Bearer x", "Basic eDp4", "Bearer pf_",
            $"Bearer {new string('a', 5000)}", "Bearer \u00E9", $"bearer  {Studio.AdminKey} "])));
        Done(request, "another key");
    }

    private void Headers(FuzzedRequest request)
    {
        request.Headers.Add(odd.Any<(string, string)>([("Range", "bytes=0-0"), ("Content-Encoding", "gzip"), ("Accept-Encoding", "nonsense"),
            ("X-HTTP-Method-Override", "DELETE"), ("Accept-Language", "tlh"), ("X-Request-Id", "a\tb"), ("If-Modified-Since", "yesterday"),
            ("Cookie", "a=b"), ("Origin", "null"), ("X-Forwarded-For", "' OR 1"), ("Content-Language", "xx")]));
        Done(request, "a header");
    }

    private static void Done(FuzzedRequest request, string what) => request.Spoilt.Add(what);
}
