using System.Collections.Concurrent;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>
/// Finished answers about the log, kept until a document, the log or the day is another. Only those of now to whoever may see everything, and only
/// where no other process can write to the log.
/// </summary>
/// <param name="store">The store.</param>
public sealed class KeptLogAnswers(Store store)
{
    private const int MostBytes = 4 * 1024 * 1024;

    private Answers _answers = new(null);

    /// <summary>The answer to a request, made if it is not kept.</summary>
    /// <param name="context">The request.</param>
    /// <param name="format">The format of the answer.</param>
    /// <param name="documents">The documents that it is about.</param>
    /// <param name="asOf">The moment that was asked for; null: now.</param>
    /// <param name="make">Makes the answer, or says why there is none.</param>
    internal async Task<IResult> Answer(HttpContext context, Format format, WholeCatalogue documents, DateTimeOffset? asOf,
        Func<ValueTask<Outcome<byte[]>>> make)
    {
        var state = asOf is null && Caller.Of(context).Access.IsWhole && store.LogPoint is { } log // before anything is read
            ? new State(documents.Point, log, documents.Today) : null;
        var (answers, question) = (state is null ? null : Of(state), new Question(context.Request.Path + context.Request.QueryString, format));
        if (answers?.Find(question) is { } kept)
            return kept.Answer(context, format);
        var outcome = await make();
        if (outcome.Found is not { } found)
            return Problem.Of(outcome.Faults);
        var made = TaggedBody.Of(found);
        answers?.Keep(question, made);
        return made.Answer(context, format);
    }

    private Answers Of(State state)
    {
        var answers = Volatile.Read(ref _answers);
        if (answers.State != state)
            Volatile.Write(ref _answers, answers = new Answers(state));
        return answers;
    }

    /// <summary>What answers rest on, besides the question.</summary>
    private sealed record State(StorePoint Documents, LogPoint Log, DateOnly Today);

    /// <summary>An address with its query, and the format of its answer.</summary>
    private sealed record Question(string Address, Format Format);

    /// <summary>Answers that rest on the same.</summary>
    private sealed class Answers(State? state)
    {
        private readonly ConcurrentDictionary<Question, TaggedBody> _bodies = new();
        private long _bytes;

        public State? State => state;

        public TaggedBody? Find(Question question) => _bodies.GetValueOrDefault(question);

        /// <summary>Keeps an answer; with the one that is too much the others go.</summary>
        public void Keep(Question question, TaggedBody body)
        {
            var bytes = body.Body.Length + (2L * question.Address.Length);
            if (Interlocked.Add(ref _bytes, bytes) > MostBytes)
            {
                _bodies.Clear();
                Interlocked.Exchange(ref _bytes, bytes);
            }

            if (bytes <= MostBytes)
                _bodies[question] = body;
        }
    }
}
