using System.Text.Json.Nodes;

namespace PriceFloor.Api.Tests.Plans;

/// <summary>The plan of the worked example of the model, for the worked studio.</summary>
internal static class WorkedPlan
{
    /// <summary>Lines as sku, channel, price and units.</summary>
    private const string Lines =
        "PN-007 web 210 60, PN-007 gallery 210 24, PN-007 wholesale 103 36, BD-008 web 78 60, BD-008 wholesale 39 60, RB-021 web 64 130, "
        + "RB-014 web 58 120, RB-014 fair 60 40, OR-002 fair 48 60, OR-002 web 44 110, OR-002 wholesale 22 96, BV-004 web 95 60, MB-001 web 42 40, "
        + "FG-003 fair 58 50, ER-003 market 32.95 60, GB-001 gallery 290 10, MB-005 gallery 300 8, BD-012 gallery 300 6, OR-006 market 52.95 60, "
        + "DP-002 market 115.95 24";

    /// <summary>The worked plan: a steady year, its sales tax remitted by the channels.</summary>
    public static JsonObject Steady => JsonNode.Parse($$"""
        { "profile": "main", "lines": [ {{string.Join(',', Lines.Split(", ").Select(line => line.Split(' ')).Select(part =>
            $$"""{"sku":"{{part[0]}}","channel":"{{part[1]}}","price":{{part[2]}},"units":{{part[3]}},"season":"{{part[1]}}"}"""))}} ],
          "seasons": { "web": [4,5,6,6,8,6,5,5,7,10,19,19], "market": [4,5,6,6,8,6,5,5,7,10,19,19], "fair": [0,0,0,5,15,15,10,10,10,5,25,5],
            "gallery": [5,5,8,8,10,10,10,8,8,8,10,10], "wholesale": [5,10,10,8,6,5,6,14,16,12,6,2] },
          "work": [4,4,4,4,4,4,3,2.5,4,4.5,4.5,3.5],
          "terms": [ {"channel":"wholesale","depositShare":0.3,"depositMonthsBefore":1,"paidAfterMonths":1,"remittedByChannel":true},
            {"channel":"gallery","paidAfterMonths":1,"remittedByChannel":true}, {"channel":"web","remittedByChannel":true},
            {"channel":"market","remittedByChannel":true}, {"channel":"fair","remittedByChannel":true} ],
          "paidIn": [ {"at":"/expenses/Studio and liability insurance","months":[3]}, {"at":"/expenses/Bookkeeper and yearly return","months":[2]},
            {"at":"/expenses/Business licence and sales permits","months":[1]}, {"at":"/expenses/One course a year","months":[10]},
            {"at":"/expenses/Photographer, two days a year","months":[4,9]} ],
          "taxPaid": [ {"month":1,"amount":2300}, {"month":4,"share":0.25}, {"month":6,"share":0.25}, {"month":9,"share":0.25} ],
          "opening": { "cash": 3000, "taxSetAside": 2300 }, "reserve": 2000, "steady": true }
        """)!.AsObject();
}
