using FluentValidation;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.QuickFloors;

/// <summary>The currency must exist, and the year must have working hours.</summary>
public sealed class FirstNumbersValidator : AbstractValidator<FirstNumbers>
{
    public FirstNumbersValidator() => RuleFor(numbers => numbers).Custom((numbers, context) =>
    {
        if (context.IsSound("/currency") && Currency.Find(numbers.Currency) is null)
            context.Add("currency", FaultCodes.UnknownCurrency, "currency must be an ISO 4217 code in capitals, such as USD.");
        if (context.IsSound("/weeksPerYear", "/daysPerWeek", "/hoursPerDay")
                && numbers.WeeksPerYear * numbers.DaysPerWeek * numbers.HoursPerDay < Limits.LeastBenchHours)
            context.Add("hoursPerDay", FaultCodes.NoBenchTime,
                "Weeks, days and hours leave no time at the bench (at least 0.01 hours a year are needed).");
    });
}
