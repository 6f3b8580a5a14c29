using System.Collections.Concurrent;

namespace PriceFloor.Api.Catalogues;

/// <summary>Complete answers by their question; only a few, since they may be large.</summary>
public sealed class KeptAnswers
{
    private const int Most = 16;

    private readonly ConcurrentDictionary<object, object> _answers = new();

    /// <summary>The answer to a question, made when it is first asked.</summary>
    public async ValueTask<T> Get<T>(object question, Func<Task<T>> make) where T : class
    {
        if (_answers.TryGetValue(question, out var kept))
            return (T)kept;
        var answer = await make();
        if (_answers.Count >= Most)
            _answers.Clear();
        _answers[question] = answer;
        return answer;
    }
}
