using System.Text;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Tests.Statements;

/// <summary>Files of a bank, sent as a form, and the rules that sort their lines.</summary>
internal static class SentStatements
{
    internal const string SortingRules = """
        {"rules":[{"textHas":"bench rent","costKind":"rent","to":"business"},{"textMatches":"(rod|frit) order","costKind":"materials","to":"business","tracedTo":"piece","name":"Glass"},
        {"textHas":"home rent","to":"household","name":"Home rent"},{"textHas":"payout","to":"sale"},{"textHas":"own account","to":"own-account"}]}
        """;

    internal const string Sheet = "Date,Amount,Description\r\n2026-01-05,-540.00,Bench rent\r\n2026-01-09,-120.50,Frit order 4471\r\n"
        + "2026-02-05,-540.00,Bench rent\r\n2026-02-15,812.40,Shop payout\r\n2026-02-28,-88.00,Riverside choir trip\r\n";

    internal static Task<Answer> Send(Studio studio, string query, params (string Account, string Text)[] files) =>
        Send(studio, query, studio.Client, files);

    internal static async Task<Answer> Send(Studio studio, string query, HttpClient client, params (string Account, string Text)[] files)
    {
        using var form = new MultipartFormDataContent();
        foreach (var (account, text) in files)
            form.Add(new ByteArrayContent(Encoding.UTF8.GetBytes(text)), account, account + ".txt");
        using var response = await client.PostAsync("/v1/statements" + query, form, Studio.Cancellation);
        return await Answer.Of(response);
    }
}
