using FluentValidation;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Designs;

/// <summary>The rules between the fields of a design: one way of telling its bench time, steps that materials can find.</summary>
public sealed class DesignValidator : AbstractValidator<Design>
{
    public DesignValidator()
    {
        RuleFor(design => design.Making).Custom((making, context) =>
        {
            if (making is not null)
                MakingFaults(making, context);
        });
        RuleFor(design => design.Aliases).Custom((aliases, context) =>
        {
            foreach (var (index, alias) in aliases.Index())
                if (aliases.Take(index).Contains(alias, StringComparer.Ordinal))
                    context.Add($"aliases/{index}", "duplicate", $"\"{alias}\" stands in the list already; leave one out.");
        });
        RuleForEach(design => design.Materials).SetValidator(new MaterialLineValidator());
        RuleFor(design => design).Custom((design, context) =>
        {
            var points = (design.Making?.Steps ?? []).Select(step => step.Name).Append("start").Append("finish").ToList();
            foreach (var (index, line) in design.Materials.Index())
                if (!points.Contains(line.At))
                    context.Add($"materials/{index}/at", "unknown-step", $"No step is named \"{line.At}\"; use \"start\", \"finish\" or the name of one of the steps.");
        });
    }

    private static void MakingFaults(Making making, ValidationContext<Design> context)
    {
        var told = new[] { making.PiecesPerDay is not null, making.PiecesPerBenchDay is not null, making.MinutesPerPiece is not null, making.Steps is not null }.Count(given => given);
        if (told != 1)
            context.Add("making", "exactly-one", "Tell the bench time in exactly one way: piecesPerDay, piecesPerBenchDay, minutesPerPiece or steps.");
        if (making.Steps is { Count: 0 })
            context.Add("making/steps", "required", "Give at least one step, or tell the bench time in another way.");
        if (making.Steps is not null && making.GoodShare != 1)
            context.Add("making/goodShare", "unexpected", "With steps, each step has its own goodShare; leave this one out.");
        if (making.SetupMinutes > 0 && making.RunSize is null)
            context.Add("making/runSize", "required", "setupMinutes needs runSize: how many pieces are started in one run.");

        var names = (making.Steps ?? []).Select(step => step.Name).ToList();
        foreach (var (index, name) in names.Index())
            if (name is not null && names.Take(index).Contains(name))
                context.Add($"making/steps/{index}/name", "duplicate", $"Another step is named \"{name}\"; give each its own name.");
    }
}

/// <summary>A line is either a material with its quantity, or an amount of money.</summary>
public sealed class MaterialLineValidator : AbstractValidator<MaterialLine>
{
    public MaterialLineValidator() => RuleFor(line => line).Custom((line, context) =>
    {
        if (line.Material is not null == line.Amount is not null)
        {
            context.Add("", "exactly-one", "A line is either a material of the price list with its quantity, or an amount of money.");
            return;
        }

        if (line.Material is not null && line.Quantity is null)
            context.Add("quantity", "required", "A material needs its quantity.");
        if (line.Material is not null && line.Name is not null)
            context.Add("name", "unexpected", "name is only for a line with an amount; a material has its name already.");
        if (line.Amount is null)
            return;
        if (line.Quantity is not null)
            context.Add("quantity", "unexpected", "quantity goes with material, not with amount.");
        if (line.WasteShare != 0)
            context.Add("wasteShare", "unexpected", "wasteShare goes with material, not with amount; put the waste into the amount.");
        if (line.BatchSize != 1)
            context.Add("batchSize", "unexpected", "batchSize goes with material, not with amount; give the amount for one piece.");
    });
}
