using System.Text;
using System.Text.Json;

namespace PriceFloor.Api.OpenApi.Reading;

/// <summary>
/// The contract as one page to read: every call with its parameters, bodies, answers and a line to try, and every body with its fields. Everything
/// on it is from the contract; no script, and nothing from elsewhere.
/// </summary>
public sealed class ContractPage
{
    private const string Style = """
        :root { color-scheme: light dark; --text: #1b1b1b; --quiet: #555a63; --paper: #fff; --line: #d6d9de; --block: #f3f4f6; --link: #1d5aa0 }
        @media (prefers-color-scheme: dark) {
          :root { --text: #f1f1f1; --quiet: #b7bdc8; --paper: #15181d; --line: #3b424d; --block: #20242b; --link: #93c4ff }
        }
        body { font: 1rem/1.5 system-ui, "Segoe UI", Roboto, "Helvetica Neue", Arial, sans-serif; color: var(--text); background: var(--paper);
          max-width: 60rem; margin: 0 auto; padding: 1rem; overflow-wrap: anywhere }
        h1 { margin: 0; font-size: 1.6rem } h2 { margin: 2rem 0 .5rem; font-size: 1.3rem } h3 { margin: 1rem 0 .3rem; font-size: 1rem }
        p { margin: .4rem 0 }
        a { color: var(--link) } code, pre { font: .875rem/1.45 ui-monospace, Consolas, monospace }
        nav ul { columns: 14rem; padding-left: 1.2rem; margin: .4rem 0 }
        details { border: 1px solid var(--line); border-radius: .3rem; margin: .4rem 0; padding: 0 .7rem } details[open] { padding-bottom: .7rem }
        summary { cursor: pointer; padding: .45rem 0 } summary b { display: inline-block; min-width: 3.6rem } summary span { color: var(--quiet) }
        details details { border: 0; padding: 0 }
        pre { background: var(--block); padding: .6rem; overflow-x: auto; border-radius: .3rem; overflow-wrap: normal }
        dl { margin: .3rem 0 } dt { margin-top: .5rem } dd { margin: 0 0 0 1.2rem; color: var(--quiet) } dt i { color: var(--quiet) }
        """;

    private readonly StringBuilder _page = new();
    private readonly JsonElement _contract;
    private readonly ContractSchemas _schemas;

    private ContractPage(JsonElement contract) => (_contract, _schemas) = (contract, new ContractSchemas(contract));

    /// <param name="contract">The OpenAPI document as JSON.</param>
    public static byte[] Of(ReadOnlyMemory<byte> contract)
    {
        using var document = JsonDocument.Parse(contract);
        return Encoding.UTF8.GetBytes(new ContractPage(document.RootElement).Written());
    }

    private string Written()
    {
        var info = _contract.GetProperty("info");
        var title = $"{info.Text("title")} v{info.Text("version")}";
        _page.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
            + "<meta name=\"viewport\" content=\"width=device-width\">\n"
            + $"<title>{Html.Of(title)}</title>\n<style>\n{Style}\n</style>\n</head>\n<body>\n<h1>{Html.Of(title)}</h1>\n");
        _page.Append($"<p>{Html.Prose(info.Text("summary"))} {Html.Prose(info.Text("description"))}</p>\n"
            + "<p>For programs: <a href=\"openapi/v1.json\">JSON</a>, <a href=\"openapi/v1.yaml\">YAML</a>. "
            + "<a href=\"problems\">Problems</a> and how to fix them. Send your key as <code>Authorization: Bearer pf_...</code>.</p>\n");
        var tags = ContractOperation.ByTag(_contract);
        _page.Append("<nav><ul>").AppendJoin("", tags.Select(tag => $"<li><a href=\"#{Html.Of(tag.Anchor)}\">{Html.Of(tag.Name)}</a></li>"))
            .Append("<li><a href=\"#bodies\">Bodies</a></li></ul></nav>\n");
        foreach (var tag in tags)
        {
            _page.Append($"<section id=\"{Html.Of(tag.Anchor)}\"><h2>{Html.Of(tag.Name)}</h2>\n<p>{Html.Prose(tag.Description)}</p>\n");
            foreach (var operation in tag.Operations)
                Operation(operation);
            _page.Append("</section>\n");
        }

        _page.Append("<section id=\"bodies\"><h2>Bodies</h2>\n<p>What calls take and answer, by name.</p>\n");
        _schemas.Write(_page);
        return _page.Append("</section>\n</body>\n</html>\n").ToString();
    }

    private void Operation(ContractOperation operation)
    {
        _page.Append($"<details id=\"{Html.Of(operation.Id)}\"><summary><b>{operation.Method}</b> <code>{Html.Of(operation.Path)}</code> "
            + $"<span>{Html.Prose(operation.Body.Text("summary"))}</span></summary>\n<p>{Html.Prose(operation.Body.Text("description"))}</p>\n");
        Parameters(operation);
        if (operation.Body.TryGetProperty("requestBody", out var request))
            Contents("Body", request);
        _page.Append($"<h3>To try</h3>\n<pre>{Html.Of(operation.Command(Shared))}</pre>\n");
        foreach (var answer in operation.Body.GetProperty("responses").EnumerateObject())
            Answer(answer.Name, answer.Value);
        _page.Append("</details>\n");
    }

    private void Parameters(ContractOperation operation)
    {
        if (operation.Parameters.Count == 0)
            return;
        _page.Append("<h3>Parameters</h3>\n<dl>");
        foreach (var one in operation.Parameters)
            _page.Append($"<dt><code>{Html.Of(one.Text("name"))}</code> <i>in the {one.Text("in")}"
                + $"{(one.TryGetProperty("required", out var needed) && needed.GetBoolean() ? ", required" : "")}, "
                + $"{_schemas.TypeOf(one.GetProperty("schema"))}</i></dt><dd>{Html.Prose(one.Text("description"))}</dd>");
        _page.Append("</dl>\n");
    }

    /// <summary>An answer that only this call has is shown whole; a shared one, a problem, by its first sentence.</summary>
    private void Answer(string status, JsonElement answer)
    {
        var shown = Resolved(answer);
        if (status.StartsWith('2') || status == "304")
            Contents(status, shown);
        else
            _page.Append($"<p>{Html.Of(status)}: {Html.Prose(shown.Text("description"))}</p>\n");
    }

    private JsonElement Shared => _contract.GetProperty("components").TryGetProperty("examples", out var shared) ? shared : default;

    private JsonElement Resolved(JsonElement answer) => answer.TryGetProperty("$ref", out var reference)
        ? _contract.GetProperty("components").GetProperty("responses").GetProperty(reference.GetString()!.Split('/')[^1])
        : answer;

    private void Contents(string title, JsonElement holder)
    {
        _page.Append($"<h3>{Html.Of(title)}</h3>\n<p>{Html.Prose(holder.Text("description"))}</p>\n");
        if (!holder.TryGetProperty("content", out var contents))
            return;
        foreach (var content in contents.EnumerateObject())
        {
            var type = content.Value.TryGetProperty("schema", out var schema) ? ": " + _schemas.TypeOf(schema) : "";
            _page.Append($"<p><code>{Html.Of(content.Name)}</code>{type}</p>\n");
            foreach (var (summary, text) in ContractOperation.ExamplesOf(content.Value, Shared).Take(4))
                _page.Append(summary.Length > 0 ? $"<p>{Html.Prose(summary)}</p>" : "").Append($"<pre>{Html.Of(text)}</pre>\n");
        }
    }
}
