using System.Text;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Documents;

/// <summary>A draft alone as the answer: its text is what the store would return, so it can be stored as it comes.</summary>
public sealed class DraftAnswer<T>(T draft) : IResult where T : class
{
    public Task ExecuteAsync(HttpContext httpContext)
    {
        var body = Encoding.UTF8.GetBytes(DraftText<T>.Of(draft));
        var response = httpContext.Response;
        response.ContentType = JsonAnswer.ContentType;
        response.ContentLength = body.Length;
        return AnswerBlocks.WriteAsync(response, body, httpContext.RequestAborted);
    }
}

public static class DraftAnswer
{
    public static DraftAnswer<T> Of<T>(T draft) where T : class => new(draft);
}
