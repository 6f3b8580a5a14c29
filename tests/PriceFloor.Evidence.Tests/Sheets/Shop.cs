using System.Text;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Sheets;

namespace PriceFloor.Evidence.Tests.Sheets;

/// <summary>Sheets of an invented shop, and the studio that knows its designs RB-014 and AB-001 and its channels web (USD) and fair (JPY).</summary>
internal static class Shop
{
    public const string Source = "web-shop";

    public static readonly LogSheet Web = new() { Channel = "web" };

    public static readonly KnownNames Names = new(
        name => name is "RB-014" or "AB-001" ? name : name == "pendant" ? "RB-014" : null,
        name => name is "web" ? new KnownChannel(name, Currency.Of("USD"))
            : name is "fair" ? new KnownChannel(name, Currency.Of("JPY")) : null);

    public static List<SentMovement> Sent(string text, LogSheet? sheet = null) =>
        MovementSheet.Read(Encoding.UTF8.GetBytes(text), sheet ?? Web).Value;

    public static SettledLines<Movement> Settled(string text, LogSheet? sheet = null, LogWindow? window = null) =>
        MovementSettling.Settle(Sent(text, sheet), Source, Names, window ?? new LogWindow());

    /// <summary>What counts, a line each.</summary>
    public static string Told(SettledLines<Movement> lines) => string.Join("\n", lines.Used.Select(line => Told(line.Entry)));

    public static string Told(Movement line)
    {
        var paid = line.Paid is { } money ? FormattableString.Invariant($"{money}") : "-";
        return FormattableString.Invariant($"{line.On:yyyy-MM-dd} {line.What} {line.Pieces} {line.Sku} {line.Channel ?? "-"} {paid}");
    }

    public static string Refused(SettledLines<Movement> lines) => string.Join(", ", lines.Refused.Select(line => $"{line.Line} {line.Code.Word}"));
}
