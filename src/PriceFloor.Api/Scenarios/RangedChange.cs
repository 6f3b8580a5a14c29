using PriceFloor.Api.Changes;

namespace PriceFloor.Api.Scenarios;

/// <summary>A change whose value is a range.</summary>
/// <param name="Index">Its place in the list of changes.</param>
/// <param name="Change">The change.</param>
/// <param name="Name">The kind and key of what it names, and <c>at</c> as it was sent: <c>profile:main#/calendar/weeksPerYear</c>.</param>
/// <param name="Low">One time in ten the number is lower.</param>
/// <param name="Likely">As often above as below; what was stored where the range leaves it out.</param>
/// <param name="High">One time in ten the number is higher.</param>
public sealed record RangedChange(int Index, DocumentChange Change, string Name, decimal Low, decimal Likely, decimal High);
