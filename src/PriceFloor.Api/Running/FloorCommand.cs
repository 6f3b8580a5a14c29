using System.Text.Json;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;
using PriceFloor.Api.Http;
using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.Running;

/// <summary>The floor of a stored design, as GET /v1/designs/{sku}/floor-price gives it, or on one channel.</summary>
internal static class FloorCommand
{
    public static readonly VerbOption[] Options = [QuestionCommands.Json, VerbOption.Data];

    public static async Task<int> Run(Settings settings, IReadOnlyList<string> words, IReadOnlyDictionary<string, string> options, Stream output)
    {
        var catalogue = QuestionCommands.Documents(settings, asOf: null);
        if (catalogue.DesignNamed(words[0]) is not { } design)
            throw new SettingsException($"There is no design \"{words[0]}\"{catalogue.HintOfDesign(words[0])}; case counts.");
        var channel = words.Count > 1 ? catalogue.Channel(words[1])
            ?? throw new SettingsException($"There is no channel \"{words[1]}\"{catalogue.HintOfChannel(words[1])}; case counts.") : null;
        var answer = AnswerOf(catalogue, design, channel);
        await using var text = QuestionCommands.TextTo(output);
        if (options.ContainsKey(QuestionCommands.Json.Name))
            await text.WriteLineAsync(JsonSerializer.Serialize(answer, WireJson.Options));
        else
            Tell(design, answer, catalogue, text);
        return 0;
    }

    private static FloorPriceAnswer AnswerOf(Catalogue catalogue, Stored<Design> design, Stored<Channel>? channel)
    {
        if (design.Sound is not { } document || catalogue.Profile(document.Profile) is not { Sound: not null } profile)
            throw new SettingsException($"The design \"{design.Key}\" or its profile is damaged in the store; PUT it again, or run check-store.");
        var outcome = catalogue.Floor(profile, design);
        return outcome.Found is not { } floor
            ? throw QuestionCommands.FaultOf(Problem.Of(FloorAnswers.FaultsOf(outcome.Faults, profile, design, Place.Query)))
            : channel is null ? floor.AnswerOnAll(catalogue, workings: false)
            : floor.AnswerOn(catalogue, [channel], workings: false);
    }

    private static void Tell(Stored<Design> design, FloorPriceAnswer answer, Catalogue catalogue, TextWriter text)
    {
        text.WriteLine($"{DisplayText.Named(design.Document.Name, design.Key)}: floor {DisplayText.Money(answer.Floor, answer.Currency)} "
            + $"{answer.Currency}, what each piece must bring in after everything a shop takes");
        var table = new TextTable("Channel", "Currency", "+Floor price", "+Target", "+Listed", "Verdict");
        var listed = catalogue.ListedPrices(design.Key);
        foreach (var one in answer.Channels)
        {
            string Money(decimal? price) => price is { } known ? DisplayText.Money(known, one.Currency) : "";
            table.Add(one.Channel, one.Currency, Money(one.FloorPrice), Money(one.TargetPrice),
                Money(one.ListedPrice ?? listed.GetValueOrDefault(one.Channel)?.Sound?.Price),
                one.Reason is { } reason ? DisplayText.Reason(reason) : one.Verdict is { } verdict ? DisplayText.Verdict(verdict) : "");
        }

        table.WriteTo(text);
        foreach (var warning in answer.Warnings)
            text.WriteLine($"Note: {warning.Message}");
    }
}
